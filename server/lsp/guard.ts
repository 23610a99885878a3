// Every handler passes through here: cancelled ones answer at once, failing ones log and answer with a default.
import {
  type CancellationToken,
  LSPErrorCodes,
  type RemoteConsole,
  ResponseError,
} from "vscode-languageserver";

/**
 * A handler that never fails: what it throws is logged under its name and `otherwise` is the answer, so that one broken
 * feature does not take the others with it. A cancelled request is refused, as the protocol wants it.
 */
export function guarded<P, R, E = void>(
  name: string,
  console: RemoteConsole,
  otherwise: R,
  handler: (params: P, token: CancellationToken) => R | Promise<R>,
): (params: P, token: CancellationToken) => Promise<R | ResponseError<E>> {
  return async (params, token) => {
    if (token.isCancellationRequested) return cancelled();
    try {
      const answer = await handler(params, token);
      return token.isCancellationRequested ? cancelled() : answer;
    } catch (error) {
      // What a handler refuses in the protocol's own words is meant for the user.
      if (error instanceof ResponseError) throw error;
      console.error(`${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
      return otherwise;
    }
  };
}

function cancelled<E>(): ResponseError<E> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, "cancelled");
}
