import { answerInWorker } from './answerInWorker';
import type { FromWorker, ToWorker } from './planMessages';

/** The little of a worker's own world that is used here. */
interface WorkerWorld {
  postMessage(message: FromWorker): void;
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
}

const world = globalThis as unknown as WorkerWorld;
const answer = answerInWorker(message => world.postMessage(message));
world.onmessage = ({ data }) => void answer(data);
