import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import devCerts from 'office-addin-dev-certs';

const DAYS = 30;

const filesIn = folder => ['ca.crt', 'localhost.crt', 'localhost.key'].map(name => join(folder, name));

/** True where certificates were made before and are good for a day more. */
function areGood([ca, cert, key]) {
  if (![ca, cert, key].every(existsSync)) return false;
  const authority = new X509Certificate(readFileSync(ca));
  const ours = new X509Certificate(readFileSync(cert));
  const tomorrow = Date.now() + 24 * 3600 * 1000;
  return [authority, ours].every(({ validTo }) => Date.parse(validTo) > tomorrow) && ours.verify(authority.publicKey);
}

const howToTrust = ca => `
Browsers here do not trust this certificate yet. It was made on this machine, for localhost only, and holds ${DAYS} days. To trust it, one of:

  once, in one browser  open https://localhost:3000/taskpane.html there and accept the warning
  Chrome, Chromium      certutil -d sql:$HOME/.pki/nssdb -A -t C,, -n "development certificate" -i ${ca}
  Firefox               Settings > Privacy & Security > Certificates > View Certificates > Authorities > Import: ${ca}
  the whole machine     sudo cp ${ca} /usr/local/share/ca-certificates/office-addin-dev.crt && sudo update-ca-certificates
`;

/**
 * Certificates for https://localhost in a folder: those that stand there while they are good, else new ones. Nothing is asked to trust them.
 * @returns {Promise<{ ca: Buffer, cert: Buffer, key: Buffer }>}
 */
export async function certificatesIn(folder) {
  const files = filesIn(folder);
  if (!areGood(files)) {
    devCerts.deleteCertificateFiles(folder);
    await devCerts.generateCertificates(...files, DAYS);
  }
  const [ca, cert, key] = files.map(file => readFileSync(file));
  return { ca, cert, key };
}

/**
 * Certificates for https://localhost. On Windows and Mac the tool makes them and asks the person to trust them; on other systems trusting
 * needs rights that this script does not ask for, so it makes them only.
 * @returns {Promise<{ options: { ca: Buffer, cert: Buffer, key: Buffer }, advice: string }>} for an HTTPS server, and what is left for the person to do
 */
export async function developmentCertificates() {
  if (process.platform === 'win32' || process.platform === 'darwin') {
    return { options: await devCerts.getHttpsServerOptions(DAYS), advice: '' };
  }
  // Where the tool itself keeps them, so that a trust given once holds for both.
  const folder = join(homedir(), '.office-addin-dev-certs');
  return { options: await certificatesIn(folder), advice: howToTrust(filesIn(folder)[0]) };
}
