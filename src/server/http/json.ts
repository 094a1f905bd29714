/** A JSON answer that nothing on the way may keep. */
export function json(status: number, body: object, headers: Readonly<Record<string, string>> = {}): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store', ...headers },
  });
}

/** A refusal of a request: the sentence for the person, and a code for the program. */
export function refusal(status: number, code: string, message: string): Response {
  return json(status, { code, message });
}
