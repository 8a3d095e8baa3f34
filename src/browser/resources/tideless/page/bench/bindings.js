// The compiler's loader makes its bindings by evaluating texts of its own, which the page's policy forbids. It knows but
// these few kinds of text; each is made here as a function instead, and any other is refused.
const Function = (() => {
  const trying = (work, failed) => {
    try {
      return work();
    } catch (fault) {
      return failed(fault);
    }
  };
  const global = name => {
    if (!(name in globalThis)) {
      throw new ReferenceError(name);
    }
    return globalThis[name];
  };

  // Each kind by how its text begins, with the names of its parameters that stand before any others.
  const KINDS = [
    ["rethrowJsAsJava,fn", "try {\n    return fn(", () => (rethrow, called, ...given) => trying(() => called(...given), rethrow)],
    ["rethrowJsAsJava,getGlobalName,instance,method", "try {\n    return instance !== null", () =>
      (rethrow, named, instance, method, ...given) =>
        trying(() => instance !== null ? instance[method](...given) : named(method)(...given), rethrow)],
    ["rethrowJsAsJava,constructor", "try {\n    return new constructor(", () =>
      (rethrow, constructor, ...given) => trying(() => new constructor(...given), rethrow)],
    ["wrapCallFromJavaToJs", "return new Function('wrapCallFromJavaToJs', ", () =>
      (wrap, ...texts) => of("wrapCallFromJavaToJs", ...texts).bind(undefined, wrap)],
    ["constructor", "return function ", () => constructor =>
      function(marker, javaObject) {
        return constructor.call(this, marker, javaObject);
      }],
    ["rethrowJavaAsJs,fn", "return function(", body => body.includes("fn(this") ? (rethrow, called) =>
      function(...given) {
        return trying(() => called(this, ...given), rethrow);
      } : (rethrow, called) => (...given) => trying(() => called(...given), rethrow)],
    ["", "return [", () => (...given) => given]
  ];

  function of(...texts) {
    const body = texts.pop();
    const names = texts.join();
    const kind = KINDS.find(([first, begins]) => body.startsWith(begins)
        && (names === first || first === "" || names.startsWith(first + ",")));
    if (kind) {
      return kind[2](body);
    }
    const [, name] = /^return ([A-Za-z0-9_$]+);$/.exec(body) || [];
    const at = texts.indexOf(name);
    if (name && (at >= 0 || texts.length === 0)) {
      return at >= 0 ? (...given) => given[at] : () => global(name);
    }
    throw new Error("a binding of another kind: " + body);
  }

  return function(...texts) {
    return of(...texts);
  };
})();
