/** Edges of the icons in pixels: all sizes that the ribbon and the add-in list ask for at any screen scale. */
export const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80];
