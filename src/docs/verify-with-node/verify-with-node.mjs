// Checks the seal of one result, and the capture beside it.
//
//   node verify-with-node.mjs RESULT.json KEY.jwk
//
// KEY.jwk is the public key of whoever sealed it ("thumbseal key show"); take it from a person you
// trust, never from the result. Exit code 0: the seal is good and by this key; 1: it is not;
// 2: wrong usage, or not readable.
// Needs Node.js 18 or newer, and once, in this folder: npm ci

import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import canonicalize from "canonicalize";
import { base64url, calculateJwkThumbprint, compactVerify, errors, importJWK } from "jose";

// The last of 86 characters carries two bits of a signature; only these four leave the rest zero.
const SIGNATURE = /^([A-Za-z0-9_-]+)\.\.([A-Za-z0-9_-]{85}[AQgw])$/;

class Broken extends Error {}

// JSON.parse keeps the last of two members with one name, and does not tell. Another program may
// read the first; so look for them in the text, once it is known to be JSON.
function requireDifferentNames(text) {
  const open = [];
  for (const [token, name] of text.matchAll(/("(?:[^"\\]|\\.)*")\s*:|"(?:[^"\\]|\\.)*"|[{}]/g)) {
    if (token === "{") {
      open.push(new Set());
    } else if (token === "}") {
      open.pop();
    } else if (name !== undefined) {
      const names = open.at(-1);
      if (names.size === names.add(JSON.parse(name)).size) {
        throw new Broken("a name occurs twice in an object");
      }
    }
  }
}

function read(file) {
  const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(readFileSync(file));
  const document = JSON.parse(text);
  if (document === null || typeof document !== "object" || Array.isArray(document)) {
    throw new SyntaxError("not a JSON object");
  }
  requireDifferentNames(text);
  return document;
}

async function checkSeal({ signature, ...signed }, jwk) {
  const parts = SIGNATURE.exec(signature);
  if (!parts) {
    throw new Broken("no signature of the one form that is taken");
  }
  // Nothing in a header is obeyed: it has to be this very one, the algorithm and the key.
  const kid = await calculateJwkThumbprint(jwk);
  const header = base64url.encode(canonicalize({ alg: "EdDSA", kid }));
  if (parts[1] !== header) {
    throw new Broken("sealed with another key, or not with EdDSA");
  }
  const content = base64url.encode(canonicalize(signed));
  const key = await importJWK(jwk, "EdDSA");
  await compactVerify(`${header}.${content}.${parts[2]}`, key, { algorithms: ["EdDSA"] });
  return kid;
}

// The recording lies beside the document, if it came along.
function checkCapture({ evidence }, folder) {
  if (evidence === undefined) {
    return "";
  }
  const name = String(evidence.capture);
  if (name !== basename(name) || !existsSync(join(folder, name))) {
    return "; its capture is not here";
  }
  const digest = createHash("sha256").update(readFileSync(join(folder, name))).digest("hex");
  if (digest !== evidence.sha256) {
    throw new Broken("the capture is not the one that was graded");
  }
  return "; the capture is the one that was graded";
}

function readKey(file) {
  const { kty, crv, x, d } = JSON.parse(readFileSync(file, "utf8"));
  if (kty !== "OKP" || crv !== "Ed25519" || d !== undefined) {
    throw new SyntaxError("not a public Ed25519 key");
  }
  return { kty, crv, x };
}

async function answer(result, keyFile) {
  try {
    const jwk = readKey(keyFile);
    const document = read(result);
    const kid = await checkSeal(document, jwk);
    const capture = checkCapture(document, dirname(result));
    return [0, `${result}: good seal by the key ${kid}${capture}`];
  } catch (trouble) {
    if (trouble instanceof errors.JWSSignatureVerificationFailed) {
      return [1, `${result}: broken seal: the content is not what was signed`];
    }
    return trouble instanceof Broken
      ? [1, `${result}: broken seal: ${trouble.message}`]
      : [2, `${result} or ${keyFile}: cannot be read (${trouble.name})`];
  }
}

const files = process.argv.slice(2);
const [code, line] =
  files.length === 2
    ? await answer(...files)
    : [2, "usage: node verify-with-node.mjs RESULT.json KEY.jwk"];
(code === 2 ? console.error : console.log)(line);
process.exitCode = code;
