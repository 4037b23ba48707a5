import { libraryOnUse } from '../../../cells/on-use.ts';
import type { Request } from './messages.ts';
import { serve } from './serve.ts';

const receive = serve(libraryOnUse(), (reply) => {
  const handed = 'results' in reply ? [reply.results.numbers.buffer] : [];
  self.postMessage(reply, { transfer: handed });
});

self.onmessage = (event: MessageEvent<Request>) => receive(event.data);
