import { library } from '../../cells/computing.ts';
import { createAnswer } from './answer.ts';
import type { Request } from './messages.ts';

const answer = createAnswer(library);

self.onmessage = (event: MessageEvent<Request>) => {
  const reply = answer(event.data);
  const handed = 'results' in reply ? [reply.results.numbers.buffer] : [];
  self.postMessage(reply, { transfer: handed });
};
