// Loaded before the program: any try to reach a network is written to the file named in TRIED and refused.
import { appendFileSync } from 'node:fs';
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

const connect = net.Socket.prototype.connect;
net.Socket.prototype.connect = function (...args) {
  // A pipe on this machine is no network: the TypeScript loader tells its parent by one.
  const [options] = Array.isArray(args[0]) ? args[0] : args;
  const isPipe = typeof options === 'string' || typeof options?.path === 'string';
  return isPipe ? connect.apply(this, args) : refuse('net.Socket.connect')();
};
net.Server.prototype.listen = refuse('net.Server.listen');
dgram.Socket.prototype.bind = refuse('dgram.Socket.bind');
dgram.Socket.prototype.send = refuse('dgram.Socket.send');
dns.lookup = refuse('dns.lookup');
dns.promises.lookup = refuse('dns.promises.lookup');
globalThis.fetch = refuse('fetch');
syncBuiltinESMExports();
