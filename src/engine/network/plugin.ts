import { CellError, ErrorType, FunctionArgumentType, FunctionPlugin, HyperFormula } from 'hyperformula';
import type { EngineFunction } from './functions.ts';

/** Prefix of our functions inside the grid, so that none can be taken for one of the engine's own. */
export const PREFIX = 'FW_';

type Body = (...args: (number | boolean | string)[]) => number | boolean | CellError;
interface PluginMethods {
  [method: string]: unknown;
}

const registered = new Set<string>();

/**
 * Makes functions known to the grid. HyperFormula keeps plugins for the whole process, so a name is registered once;
 * a throw inside a body would leave other cells silently stale, so every body is guarded and gives an error value.
 */
export function registerFunctions(functions: readonly EngineFunction[]): void {
  const fresh = functions.filter((fn) => !registered.has(fn.name));
  if (fresh.length === 0) return;
  const metadata: Record<string, object> = {};
  class Functions extends FunctionPlugin {}
  for (const fn of fresh) {
    registered.add(fn.name);
    const method = `call_${fn.name}`;
    const id = PREFIX + fn.name;
    metadata[id] = {
      method,
      parameters: Array.from(
        { length: Math.max(fn.args.max === Infinity ? fn.args.min || 1 : fn.args.max, 0) },
        (_, i) => ({
          argumentType: FunctionArgumentType.SCALAR,
          optionalArg: i >= fn.args.min,
        }),
      ),
      ...(fn.args.max === Infinity ? { repeatLastArgs: 1 } : {}),
    };
    const body: Body = (...args) => {
      // What is wrong upstream goes on as it is: it names the cell where it began.
      const upstream = (args as readonly unknown[]).find((arg) => arg instanceof CellError);
      if (upstream instanceof CellError) return upstream;
      try {
        const result = fn.compute(...args.filter((arg) => arg !== undefined));
        if (typeof result === 'object') return new CellError(ErrorType.NUM, result.message);
        if (typeof result === 'number' && !Number.isFinite(result))
          return new CellError(ErrorType.NUM, `${fn.name} gives no finite number here`);
        return result === 0 ? 0 : result;
      } catch (thrown) {
        return new CellError(ErrorType.ERROR, `${fn.name} failed: ${String(thrown)}`);
      }
    };
    (Functions.prototype as unknown as PluginMethods)[method] = function (
      this: { runFunction: (...rest: unknown[]) => unknown; metadata: (name: string) => unknown },
      ast: { args: unknown },
      state: unknown,
    ) {
      return this.runFunction(ast.args, state, this.metadata(id), body);
    };
  }
  (Functions as unknown as { implementedFunctions: object }).implementedFunctions = metadata;
  const names = Object.fromEntries(Object.keys(metadata).map((id) => [id, id]));
  HyperFormula.registerFunctionPlugin(Functions as never, { enGB: names });
}
