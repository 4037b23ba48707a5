import { library } from '../../cells/computing.ts';
import { Engine } from './engine.ts';
import type { Reply, Request } from './messages.ts';
import { Packer } from './packed.ts';
import { workOut } from './worked-example.ts';

const engine = new Engine(library);
const packer = new Packer();

function answer(request: Request): Reply {
  const { n } = request;
  switch (request.ask) {
    case 'load':
      return { n, gives: 'results', results: packer.pack(engine.load(request.file)) };
    case 'update':
      return { n, gives: 'results', results: packer.pack(engine.apply(request.change)) };
    case 'budget':
      return { n, gives: 'budget', budget: engine.budget(request.cell, request.output) };
    case 'tables':
      return { n, gives: 'tables', tables: engine.tables() };
    case 'chain':
      return { n, gives: 'chain', chain: engine.chain(request.cell) };
    case 'example': {
      const kind = library.kinds.get(request.kind);
      if (!kind) return { n, gives: 'failure', message: `The library has no ${request.kind}.` };
      return { n, gives: 'example', example: workOut(library, kind, request.example) };
    }
  }
}

self.onmessage = (event: MessageEvent<Request>) => {
  let reply: Reply;
  try {
    reply = answer(event.data);
  } catch (thrown) {
    packer.forget();
    reply = {
      n: event.data.n,
      gives: 'failure',
      message: thrown instanceof Error ? thrown.message : String(thrown),
    };
  }
  const handed = reply.gives === 'results' ? [reply.results.numbers.buffer] : [];
  self.postMessage(reply, { transfer: handed });
};
