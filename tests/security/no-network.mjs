// Loaded before the program: any try to reach a network or to start another program is written to the file named in
// TRIED and refused.
import { appendFileSync } from 'node:fs';
import childProcess from 'node:child_process';
import dgram from 'node:dgram';
import dns from 'node:dns';
import net from 'node:net';
import { syncBuiltinESMExports } from 'node:module';

function refuse(what) {
  return () => {
    appendFileSync(process.env.TRIED, `${what}\n`);
    throw new Error(`${what} is not allowed here`);
  };
}

net.Socket.prototype.connect = refuse('net.Socket.connect');
net.Server.prototype.listen = refuse('net.Server.listen');
dgram.Socket.prototype.bind = refuse('dgram.Socket.bind');
dgram.Socket.prototype.send = refuse('dgram.Socket.send');
for (const ask of Object.keys(dns).filter((name) => /^(lookup|resolve|reverse)/.test(name))) {
  dns[ask] = refuse(`dns.${ask}`);
  if (ask in dns.promises) dns.promises[ask] = refuse(`dns.promises.${ask}`);
}
for (const start of ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork'])
  childProcess[start] = refuse(`child_process.${start}`);
globalThis.fetch = refuse('fetch');
globalThis.WebSocket = refuse('WebSocket');
syncBuiltinESMExports();

// Libraries may make code from texts of their own; the texts are kept to be looked at.
if (process.env.CODE) {
  const kept = (make, args) => {
    appendFileSync(process.env.CODE, `${args.join('\n')}\n`);
    return make(...args);
  };
  const { Function: RealFunction, eval: realEval } = globalThis;
  globalThis.Function = new Proxy(RealFunction, {
    construct: (Target, args) => kept((...given) => new Target(...given), args),
    apply: (Target, _self, args) => kept((...given) => new Target(...given), args),
  });
  Object.defineProperty(globalThis, 'eval', { value: (text) => kept(realEval, [text]) });
}
