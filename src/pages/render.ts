import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';

/** Renders a whole page and sends it. */
export function sendPage(reply: FastifyReply, page: VNode, status = 200): void {
  reply
    .status(status)
    .type('text/html; charset=utf-8')
    .send(`<!doctype html>${renderToString(page)}`);
}

/** After a form was taken: look at the result there. A reload then repeats nothing. */
export function seeOther(reply: FastifyReply, path: string): void {
  reply.status(303).header('location', path).send();
}
