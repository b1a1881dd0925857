import { loadScript } from '../../../src/preview/headless/loadScript';

/** As a bundler loads a part of its own: a script element that is put on the page, from beside the script itself. */
const LOADING = `
  var part = function (name) {
    return new Promise(function (done, failed) {
      var script = document.createElement('script');
      script.src = new URL(name, document.currentScript.src).href;
      script.onload = done;
      script.onerror = function () { failed(new Error('no ' + name)); };
      document.head.appendChild(script);
    });
  };
`;

const call = async (script: string, sibling?: Parameters<typeof loadScript>[1]) => {
  const functions = loadScript(`${LOADING}${script}`, sibling);
  return (functions.get('ANSWER') as () => Promise<unknown>)();
};

test('a script finds a part beside itself, which runs in the same world', async () => {
  const answer = call(`CustomFunctions.associate('ANSWER', () => part('solver.js').then(() => solve(20)));`, name =>
    name === 'solver.js' ? 'self.solve = n => n + 1;' : undefined,
  );
  await expect(answer).resolves.toBe(21);
});

test('a part may come as bytes, and a file that is fetched as well', async () => {
  const files: Record<string, Uint8Array> = {
    'solver.js': new TextEncoder().encode('self.ready = true;'),
    'solver.wasm': new Uint8Array([0, 97, 115, 109]),
  };
  const answer = call(
    `CustomFunctions.associate('ANSWER', async () => {
      await part('solver.js');
      const file = await fetch(new URL('solver.wasm', location.href));
      return [ready, file.status, new Uint8Array(await file.arrayBuffer()).length];
    });`,
    name => files[name],
  );
  expect([...((await answer) as unknown[])]).toEqual([true, 200, 4]);
});

test('what is not there is an error of the script, as on a page: the element’s, or 404', async () => {
  await expect(call(`CustomFunctions.associate('ANSWER', () => part('solver.js'));`)).rejects.toThrow('no solver.js');
  await expect(call(`CustomFunctions.associate('ANSWER', async () => (await fetch('solver.wasm')).status);`)).resolves.toBe(404);
});

test('a script that fails to load says so at once', () => {
  expect(() => loadScript('CustomFunctions.associate(')).toThrow(/end of input/i);
});
