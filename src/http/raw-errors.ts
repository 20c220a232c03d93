import { STATUS_CODES } from "node:http";
import type { Socket } from "node:net";
import type { RefusalCode } from "../../shared/errors.ts";
import { toProblem } from "./problem-details.ts";

interface ConnectionError extends Error {
  readonly code?: string;
}

interface RawRefusal {
  readonly code: RefusalCode;
  readonly message: string;
}

// by the codes of Node's parser and of its watch over slow connections
const BY_CODE: Readonly<Record<string, RawRefusal>> = {
  HPE_HEADER_OVERFLOW: {
    code: "headers-too-large",
    message: "The address and headers are more than is read here.",
  },
  ERR_HTTP_REQUEST_TIMEOUT: {
    code: "request-too-slow",
    message: "The request was not complete when its time was up.",
  },
};
const NOT_HTTP: RawRefusal = {
  code: "validation-failed",
  message: "The request is not well-formed HTTP/1.1.",
};

/** What never becomes a request, as it is no HTTP or does not end: answered on the bare connection, which is then closed. */
export function answerRaw(error: ConnectionError, socket: Socket): void {
  if (error.code === "ECONNRESET" || socket.destroyed || !socket.writable) return;
  const problem = toProblem({ ...(BY_CODE[error.code ?? ""] ?? NOT_HTTP), faults: [] });
  const body = JSON.stringify(problem);
  socket.end(
    `HTTP/1.1 ${problem.status} ${STATUS_CODES[problem.status]}\r\ncontent-type: application/problem+json\r\ncontent-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`,
  );
}
