import { parseAst } from 'vite';

/**
 * A method, or a function put on a prototype: where it stands, of which class it is (none where that is not told), and
 * what its body reads: `names` of anything, `own` of `this`.
 * @typedef {{ of: string | undefined, name: string, start: number, end: number, names: Set<string>, own: Set<string> }} Method
 */

const isThis = (/** @type {any} */ node) => node.object.type === 'ThisExpression';

/**
 * Methods of a program in one module, and all that is read by name outside of them.
 * @param {string} code
 */
function methodsOf(code) {
  /** @type {Method[]} */
  const methods = [];
  /** @type {Map<string, string>} class to the one it extends */
  const parents = new Map();
  /** @type {Set<string>} starts of names that are put together while running */
  const starts = new Set();
  const outside = new Set(/** @type {string[]} */ ([]));
  /** @type {{ method?: Method, ownThis: boolean, cls?: string }} */
  let at = { ownThis: false };
  const names = () => at.method?.names ?? outside;

  const inside = (/** @type {typeof at} */ next, /** @type {unknown} */ node) => {
    const before = at;
    at = next;
    walk(node);
    at = before;
  };
  const method = (/** @type {any} */ node, /** @type {string} */ name, /** @type {any} */ body) => {
    const own = at.cls !== undefined;
    const found = { of: at.cls, name, start: node.start, end: node.end, names: new Set(), own: new Set() };
    methods.push(/** @type {Method} */ (found));
    const before = at;
    at = { method: /** @type {Method} */ (found), ownThis: own };
    walk(body.params);
    walk(body.body);
    at = before;
  };
  /** `X.prototype.name = function` */
  const onPrototype = (/** @type {any} */ node) => {
    const { left, right, operator } = node.expression;
    if (node.expression.type !== 'AssignmentExpression' || operator !== '=') return false;
    if (left.type !== 'MemberExpression' || left.computed || right.type !== 'FunctionExpression')
      return false;
    const { object } = left;
    if (object.type !== 'MemberExpression' || object.computed || object.property.name !== 'prototype')
      return false;
    method(node, left.property.name, right);
    return true;
  };
  /** What is written to, or deleted, is not read. */
  const written = (/** @type {any} */ node) => {
    if (node.type !== 'MemberExpression' || !node.computed) return false;
    walk(node.object);
    if (!['Literal', 'TemplateLiteral', 'BinaryExpression'].includes(node.property.type)) walk(node.property);
    return true;
  };

  const walk = (/** @type {any} */ node) => {
    if (Array.isArray(node)) {
      for (const one of node) walk(one);
      return;
    }
    if (!node || typeof node.type !== 'string') return;
    switch (node.type) {
      case 'ClassDeclaration':
      case 'ClassExpression': {
        const cls = node.id?.name ?? `class at ${node.start}`;
        if (node.superClass) {
          parents.set(cls, node.superClass.name ?? 'unknown');
          walk(node.superClass);
        }
        inside({ ...at, cls }, node.body);
        return;
      }
      case 'MethodDefinition':
        if (node.computed || node.kind === 'constructor' || node.key.type !== 'Identifier') break;
        method(node, node.key.name, node.value);
        return;
      case 'ExpressionStatement':
        if (onPrototype(node)) return;
        break;
      case 'AssignmentExpression':
        if (!written(node.left)) break;
        walk(node.right);
        return;
      case 'UnaryExpression':
        if (node.operator === 'delete' && written(node.argument)) return;
        break;
      case 'FunctionDeclaration':
      case 'FunctionExpression':
        // It has a `this` of its own, which may be anything.
        inside({ ...at, ownThis: false }, [node.params, node.body]);
        return;
      case 'MemberExpression':
        if (node.computed) break;
        if (at.method && at.ownThis && isThis(node)) at.method.own.add(node.property.name);
        else names().add(node.property.name);
        if (node.object.type === 'Identifier') names().add(`${node.object.name}.${node.property.name}`);
        break;
      case 'ObjectPattern':
        for (const { type, computed, key } of node.properties)
          if (type === 'Property' && !computed) names().add(key.name ?? String(key.value));
        break;
      case 'Literal':
        if (typeof node.value === 'string') names().add(node.value);
        break;
      case 'TemplateLiteral':
        if (node.quasis.length > 1) starts.add(node.quasis[0].value.raw);
        break;
      case 'BinaryExpression':
        if (node.operator === '+' && typeof node.left.value === 'string') starts.add(node.left.value);
        break;
    }
    for (const key in node) if (key !== 'type') walk(node[key]);
  };
  walk(parseAst(code).body);
  return { methods, parents, outside, starts: [...starts].filter((start) => /^[\w$]{3,}$/.test(start)) };
}

/**
 * Leaves out the methods that nothing can call. A method stays where its name is read anywhere that stays: as a member,
 * in a pattern, or in a string that could be used as one; `this.name` inside a class asks only its own line of classes
 * where that has the name, and of the classes told apart in `only` what is read off their name. Code that picks methods by a name it makes up otherwise must not be given.
 *
 * @param {string} code a program in one module
 * @param {{ called: Iterable<string>, only?: Record<string, readonly string[]> }} from names called from outside; and
 *   classes of which these methods alone are called from outside
 */
export function withoutUnusedMethods(code, { called, only = {} }) {
  const { methods, parents, outside, starts } = methodsOf(code);
  /** @type {Map<string, Method[]>} */
  const byName = new Map();
  for (const method of methods) byName.set(method.name, [...(byName.get(method.name) ?? []), method]);
  const line = (/** @type {string | undefined} */ cls) => {
    /** @type {string[]} */
    const all = [];
    for (let one = cls; one !== undefined && !all.includes(one); one = parents.get(one)) all.push(one);
    return all;
  };
  const related = (/** @type {string} */ a, /** @type {string} */ b) =>
    line(a).includes(b) || line(b).includes(a);

  /** @type {Set<Method>} */
  const kept = new Set();
  /** @type {Method[]} */
  const waiting = [];
  const ask = (/** @type {string} */ name) => {
    const [cls = '', member] = name.split('.');
    if (member !== undefined && only[cls])
      waiting.push(...(byName.get(member) ?? []).filter(({ of }) => of === cls));
    for (const method of byName.get(name) ?? [])
      if (method.of === undefined || !only[method.of]) waiting.push(method);
  };
  const askOwn = (/** @type {string} */ cls, /** @type {string} */ name) => {
    const near = (byName.get(name) ?? []).filter(({ of }) => of !== undefined && related(of, cls));
    if (near.length > 0) waiting.push(...near);
    else ask(name);
  };
  for (const name of [...called, ...outside]) ask(name);
  for (const method of methods) {
    if (method.of !== undefined && only[method.of]?.includes(method.name)) waiting.push(method);
    if (starts.some((start) => method.name.startsWith(start))) waiting.push(method);
  }
  for (let method = waiting.pop(); method; method = waiting.pop()) {
    if (kept.has(method)) continue;
    kept.add(method);
    for (const name of method.names) ask(name);
    for (const name of method.own) askOwn(/** @type {string} */ (method.of), name);
  }
  let rest = '';
  let from = 0;
  for (const { start, end } of methods
    .filter((method) => !kept.has(method))
    .sort((a, b) => a.start - b.start)) {
    rest += code.slice(from, start);
    from = end;
  }
  return { code: rest + code.slice(from), left: methods.length - kept.size };
}
