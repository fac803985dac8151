import { connect } from "node:net";

export interface RawAnswer {
  readonly status: number;
  /** Names in small letters. */
  readonly headers: ReadonlyMap<string, string>;
  readonly body: string;
}

/** Sends bytes as they are, which neither fetch nor a browser would, and reads until the server ends the connection. */
export function raw(base: string, sent: string): Promise<RawAnswer> {
  const { hostname, port } = new URL(base);
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    const socket = connect(Number(port), hostname, () => socket.write(Buffer.from(sent, "latin1")));
    socket.on("data", (part) => parts.push(part));
    socket.on("error", reject);
    socket.on("close", () => resolve(read(Buffer.concat(parts).toString("utf8"))));
  });
}

function read(text: string): RawAnswer {
  const [head = "", ...rest] = text.split("\r\n\r\n");
  const [line = "", ...lines] = head.split("\r\n");
  const headers = lines.map((each) => {
    const [, name = "", value = ""] = /^([^:]+): ?(.*)$/.exec(each) ?? [];
    return [name.toLowerCase(), value] as const;
  });
  return { status: Number(line.split(" ")[1]), headers: new Map(headers), body: rest.join("\r\n\r\n") };
}

/** A request by its lines, the last of which is the body. */
export const request = (lines: readonly string[], body = ""): string =>
  [...lines, "Connection: close", `Content-Length: ${Buffer.byteLength(body, "latin1")}`, "", body].join(
    "\r\n",
  );
