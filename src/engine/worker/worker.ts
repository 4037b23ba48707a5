import { libraryOnUse } from '../../../cells/on-use.ts';
import type { Request } from './messages.ts';
import { createQueue } from './queue.ts';

const receive = createQueue(libraryOnUse(), (reply) => self.postMessage(reply));

self.onmessage = (event: MessageEvent<Request>) => receive(event.data);
