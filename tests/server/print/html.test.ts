import { expect, test } from 'vitest';
import { html } from '../../../server/print/html.ts';

test('text is escaped, HTML goes in as it is, and lists are joined', () => {
  const name = `<b onclick="x('y')">& co`;
  expect(html`<p>${name}</p>`.html).toBe('<p>&lt;b onclick=&quot;x(&#39;y&#39;)&quot;&gt;&amp; co</p>');
  expect(html`<ul>${['a', '<'].map((each) => html`<li>${each}</li>`)}</ul>`.html).toBe(
    '<ul><li>a</li><li>&lt;</li></ul>',
  );
  expect(html`${0}${''}`.html).toBe('0');
});
