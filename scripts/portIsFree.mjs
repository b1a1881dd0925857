import { createServer } from 'node:net';

/** Both addresses that `localhost` may mean: a port that is taken on one of them answers some browsers with somebody else's page. */
const LOCALHOST = ['127.0.0.1', '::1'];

const isFreeAt = (port, host) =>
  new Promise(resolve => {
    const probe = createServer();
    // A machine without IPv6 has no such address, and so nobody on it.
    probe.once('error', ({ code }) => resolve(code === 'EADDRNOTAVAIL' || code === 'EAFNOSUPPORT'));
    probe.listen({ port, host }, () => probe.close(() => resolve(true)));
  });

/** True where nothing on this machine listens at that port of `localhost`. */
export async function portIsFree(port) {
  for (const host of LOCALHOST) if (!(await isFreeAt(port, host))) return false;
  return true;
}
