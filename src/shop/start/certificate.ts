import { createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** Reads certificate and key. @returns what is wrong with them, in words, where they do not go together or have run out. */
export const readCertificate = (
  files: { file: string; key: string },
  now = Date.now(),
): { cert: Buffer; key: Buffer } | string => {
  const read = (file: string): Buffer | string => {
    try {
      return readFileSync(file);
    } catch (error) {
      return `${file} cannot be read: ${(error as Error).message}`;
    }
  };
  const cert = read(files.file);
  if (typeof cert === 'string') return cert;
  const key = read(files.key);
  if (typeof key === 'string') return key;
  let certificate: X509Certificate;
  try {
    certificate = new X509Certificate(cert);
  } catch {
    return `${files.file} is no certificate in PEM: it begins with -----BEGIN CERTIFICATE-----.`;
  }
  try {
    if (!certificate.checkPrivateKey(createPrivateKey(key)))
      return `${files.key} is not the key of the certificate in ${files.file}.`;
  } catch {
    return `${files.key} is no key in PEM that can be used without a password.`;
  }
  if (Date.parse(certificate.validTo) < now)
    return `The certificate in ${files.file} ran out on ${certificate.validTo}: browsers refuse it.`;
  return { cert, key };
};
