import { isIP } from "node:net";
import { PlainError } from "../../plain-error.js";
import type { AccessStore } from "../../store/access.js";
import { InputError } from "../../study/reading/problems.js";

/** Where the server listens and by which names it is reached. */
export interface AccessSettings {
  readonly host: string;
  readonly port: number;
  /** Whether only this machine's users can ask, directly or through a program before this one. */
  readonly isLocal: boolean;
  /** Host names, without port, by which it may be asked. */
  readonly names: ReadonlySet<string>;
  /** Addresses at which readers find it, as a browser tells an origin: "https://lake.example". */
  readonly origins: ReadonlySet<string>;
  /** Whether readers come by https, from a program before this one that takes it off. */
  readonly isSecure: boolean;
}

const localNames = ["localhost", "127.0.0.1", "[::1]"];
const everyAddress = ["0.0.0.0", "::"];
const defaultPort = 4170;

/** Reads PORT, RAMP_AND_RACK_HOST and RAMP_AND_RACK_ADDRESS. @throws InputError */
export function accessSettings(environment: Readonly<Record<string, string | undefined>>): AccessSettings {
  const host = environment.RAMP_AND_RACK_HOST?.trim() || "127.0.0.1";
  if (isIP(host) === 0 && !/^[a-z\d][a-z\d.-]*$/i.test(host)) {
    throw wrong("RAMP_AND_RACK_HOST", host, "an address of this machine, such as 192.168.1.20");
  }
  const addresses = (environment.RAMP_AND_RACK_ADDRESS ?? "")
    .split(/[\s,]+/)
    .filter(Boolean)
    .map(addressIn);
  if (everyAddress.includes(host) && addresses.length === 0) {
    throw wrong(
      "RAMP_AND_RACK_ADDRESS",
      "nothing",
      `what readers type to reach it, as ${host} is every address`,
    );
  }
  const isLocal = isLoopback(host) && addresses.every(({ hostname }) => isLoopback(hostname));
  const own = everyAddress.includes(host) ? [] : [isIP(host) === 6 ? `[${host}]` : host.toLowerCase()];
  return {
    host,
    port: portIn(environment.PORT),
    isLocal,
    names: new Set([...localNames, ...own, ...addresses.map(({ hostname }) => hostname)]),
    origins: new Set(addresses.map(({ origin }) => origin)),
    isSecure: addresses.length > 0 && addresses.every(({ protocol }) => protocol === "https:"),
  };
}

const isLoopback = (host: string): boolean =>
  ["localhost", "::1", "[::1]"].includes(host) || (isIP(host) === 4 && host.startsWith("127."));

function addressIn(text: string): URL {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url && /^https?:$/.test(url.protocol) && url.href === `${url.origin}/`) return url;
  throw wrong(
    "RAMP_AND_RACK_ADDRESS",
    text,
    "addresses without a path, such as https://mussels.lake.example",
  );
}

function portIn(text: string | undefined): number {
  const port = text === undefined ? defaultPort : Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535 && text !== "") return port;
  throw wrong("PORT", text ?? "", "a whole number up to 65535");
}

function wrong(path: string, found: string, allowed: string): InputError {
  const foundText = found === "nothing" ? found : `"${found}"`;
  return new InputError("The environment", [
    { path, found: foundText, allowed, remedy: "Set it and start again." },
  ]);
}

/** Others could reach a server that lets everyone in: for the operator. */
export class NoKeysError extends PlainError {
  override readonly isToCorrect = true;

  constructor() {
    super(
      "RAMP_AND_RACK_HOST or RAMP_AND_RACK_ADDRESS lets others reach this server, but no access key is set: anyone could read and change all studies. Add a key first: ramp-and-rack access add NAME --role edit. Or leave both out, and only this machine can ask.",
    );
  }
}

/** @throws NoKeysError, StoreError where that cannot be known */
export function refuseOpenDoor({ isLocal }: AccessSettings, keys: Pick<AccessStore, "hasKeys">): void {
  if (!isLocal && !keys.hasKeys()) throw new NoKeysError();
}

/** Where readers find the server, for its keeper. */
export function shownAddress({ host, port, origins }: AccessSettings): string {
  const name = isIP(host) === 6 ? `[${host}]` : host;
  return origins.size > 0 ? [...origins].join(" and ") : `http://${name}:${port}/`;
}
