import { execFileSync, spawnSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';

const root = join(__dirname, '../..');

/** Evaluates a module's expression in a process of its own: the scripts are modules of Node that jest does not load. */
const asked = (code: string) =>
  execFileSync(process.execPath, ['--input-type=module', '-e', code], { cwd: root, encoding: 'utf8' }).trim();

/** Something listens at a port while the work is done; a port that somebody else has taken already serves as well. */
async function whileListening<T>(port: number, host: string, work: (port: number) => T): Promise<T> {
  const server = createServer();
  const taken = await new Promise<number>(resolve => {
    server.once('error', () => resolve(port));
    server.listen({ port, host }, () => resolve((server.address() as { port: number }).port));
  });
  try {
    return work(taken);
  } finally {
    await new Promise(done => server.close(done));
  }
}

const isFree = (port: number) =>
  asked(`import { portIsFree } from './scripts/portIsFree.mjs'; console.log(await portIsFree(${port}));`);

const localhost = Object.values(networkInterfaces()).flatMap(entries => entries?.map(({ address }) => address) ?? []);

// ::1 where this machine has it; 127.0.0.1 is on every machine.
test.each(['127.0.0.1', ...localhost.filter(address => address === '::1')])(
  'a port where something listens at %s is taken',
  async host => {
    expect(await whileListening(0, host, isFree)).toBe('false');
  },
);

test('a port where nothing listens is free', async () => {
  expect(isFree(await whileListening(0, '127.0.0.1', port => port))).toBe('true');
});

test('npm run excel says that its port is taken, and that it does not serve BASE_URL', async () => {
  const { status, stdout, stderr } = await whileListening(3000, '127.0.0.1', () =>
    spawnSync(process.execPath, ['scripts/run.mjs', 'excel', '--serve'], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, BASE_URL: 'http://not.https.example' },
    }),
  );
  expect(stdout).toMatch(/BASE_URL is ignored: this serves https:\/\/localhost:3000/);
  expect(stderr).toMatch(/^Port 3000 of this machine is in use/);
  expect(status).toBe(1);
});

describe('development certificates', () => {
  const folder = mkdtempSync(join(tmpdir(), 'certificates-'));
  const file = (name: string) => readFileSync(join(folder, name));
  const make = () =>
    asked(
      `import { certificatesIn } from './scripts/developmentCertificates.mjs'; await certificatesIn(${JSON.stringify(folder)});`,
    );
  afterAll(() => rmSync(folder, { recursive: true }));

  test('are made for localhost, signed by their own authority, without asking for rights', () => {
    make();
    const certificate = new X509Certificate(file('localhost.crt'));
    expect(certificate.checkHost('localhost')).toBe('localhost');
    expect(certificate.verify(new X509Certificate(file('ca.crt')).publicKey)).toBe(true);
    expect(Date.parse(certificate.validTo) - Date.now()).toBeGreaterThan(20 * 24 * 3600 * 1000);
  });

  test('are kept while they are good, and made anew when one does not belong to the other', () => {
    const before = file('localhost.crt');
    make();
    expect(file('localhost.crt').equals(before)).toBe(true);
    const old = file('ca.crt');
    rmSync(join(folder, 'localhost.crt'));
    make();
    expect(file('ca.crt').equals(old)).toBe(false);
    writeFileSync(join(folder, 'ca.crt'), old);
    make();
    expect(new X509Certificate(file('localhost.crt')).verify(new X509Certificate(file('ca.crt')).publicKey)).toBe(true);
  });
});
