// The engine in a worker of its own.

const inPage = id => document.getElementById(id);

function bytesOf(base64) {
  return Uint8Array.from(atob(base64.trim()), c => c.charCodeAt(0));
}

// Two signs of 91 for 13 bits, or for 14 where these are below 89; one for what is left.
function denseBytes(text) {
  const signs = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz!#$%&()*+,-./:;=?@[]^_{|}~`'>";
  const sign = new Uint8Array(128);
  for (let i = 0; i < signs.length; i++) {
    sign[signs.charCodeAt(i)] = i;
  }
  const bytes = new Uint8Array(text.length);
  let to = 0;
  let held = 0;
  let bits = 0;
  for (let i = 0; i + 1 < text.length; i += 2) {
    const value = sign[text.charCodeAt(i)] + 91 * sign[text.charCodeAt(i + 1)];
    held |= value << bits;
    for (bits += (value & 8191) < 89 ? 14 : 13; bits >= 8; bits -= 8) {
      bytes[to++] = held; // what lies above a byte falls off
      held >>>= 8;
    }
  }
  if (text.length % 2 === 1) {
    bytes[to++] = held | sign[text.charCodeAt(text.length - 1)] << bits;
  }
  return bytes.subarray(0, to);
}

async function unpacked(packed) {
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}

async function unpackedJson(id) {
  return JSON.parse(new TextDecoder().decode(await unpacked(bytesOf(inPage(id).textContent))));
}

// A module of eight bytes of header and one struct type: sound only where there is garbage collection.
function knowsTheEngine() {
  const struct = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 95, 1, 120, 0]);
  return typeof WebAssembly === "object" && typeof DecompressionStream === "function" && typeof Worker === "function"
      && WebAssembly.validate(struct);
}

// A fault of the engine that has no words of its own comes with some of its loader, which tell nobody anything.
function faultOf(words) {
  return new Error(words === "(could not fetch message)" || words === "undefined" ? "" : words);
}

class Engine {
  constructor(bytes, script) {
    Object.assign(this, {bytes, script});
    this.asked = new Map();
    this.next = 0;
    this.laid = {name: "scenario.toml", files: {}, beside: {}};
    this.begin();
  }

  begin() {
    const source = new Blob([this.script], {type: "text/javascript"});
    const address = URL.createObjectURL(source);
    this.worker = new Worker(address);
    this.worker.onmessage = ({data}) => this.answered(data);
    this.worker.onerror = fault => this.failed(new Error(fault.message || "the engine did not start"));
    this.begun = this.unawaited("start", {bytes: this.bytes});
  }

  // Whoever waits for what comes after it is told when it fails or is dropped.
  unawaited(call, given) {
    const promise = this.call(call, given);
    promise.catch(() => {});
    return promise;
  }

  answered({id, answer, fault}) {
    const waiting = this.asked.get(id);
    if (waiting) {
      this.asked.delete(id);
      fault === undefined ? waiting.kept(answer) : waiting.refused(faultOf(fault));
    }
  }

  failed(fault) {
    const all = [...this.asked.values()];
    this.asked.clear();
    all.forEach(({refused}) => refused(fault));
  }

  call(call, given) {
    const id = this.next++;
    return new Promise((kept, refused) => {
      this.asked.set(id, {kept, refused, since: performance.now()});
      this.worker.postMessage({id, call, given});
    });
  }

  lay(laid) {
    this.laid = laid;
    this.unawaited("files", laid);
  }

  /** Milliseconds since the oldest unanswered call. */
  busyFor() {
    const first = this.asked.values().next().value;
    return first ? performance.now() - first.since : 0;
  }

  /** Drops what is under way: a run cannot be interrupted otherwise. */
  restart() {
    this.worker.terminate();
    const dropped = new Error("dropped");
    dropped.dropped = true;
    this.failed(dropped);
    this.begin();
    this.lay(this.laid);
  }
}
