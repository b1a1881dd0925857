// A thread that answers like the browser's cutplan-worker.js.
import { parentPort } from 'node:worker_threads';

await import('../scripts/typescriptLoader.mjs');

globalThis.postMessage = message => parentPort.postMessage(message);
parentPort.on('message', data => globalThis.onmessage?.({ data }));
await import('../src/host/cutplan/cutPlanWorker.ts');
