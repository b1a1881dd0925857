/** Dots along each side: enough for a QR code on paper. */
const DOTS = 400;

/** A square drawing (SVG text) as a PNG in Base64, black on white: Excel takes pictures in no other form. */
export async function pngOfSvg(svg: string): Promise<string> {
  const sized = svg.replace('<svg ', `<svg width="${DOTS}" height="${DOTS}" `).replaceAll('currentColor', '#000');
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(sized)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [DOTS, DOTS];
  const paper = canvas.getContext('2d')!;
  paper.fillStyle = '#fff';
  paper.fillRect(0, 0, DOTS, DOTS);
  paper.drawImage(image, 0, 0, DOTS, DOTS);
  return canvas.toDataURL('image/png').replace(/^data:image\/png;base64,/, '');
}
