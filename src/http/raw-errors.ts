import type { Socket } from "node:net";
import { toProblem } from "./problem-details.ts";

interface ConnectionError extends Error {
  readonly code?: string;
}

/** What is not HTTP at all never becomes a request: answered on the bare connection, which is then closed. */
export function answerRaw(error: ConnectionError, socket: Socket): void {
  if (error.code === "ECONNRESET" || socket.destroyed || !socket.writable) return;
  const message =
    error.code === "HPE_HEADER_OVERFLOW"
      ? "The headers are too large."
      : "The request is not well-formed HTTP/1.1.";
  const body = JSON.stringify(toProblem({ code: "validation-failed", message, faults: [] }));
  socket.end(
    `HTTP/1.1 400 Bad Request\r\ncontent-type: application/problem+json\r\ncontent-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`,
  );
}
