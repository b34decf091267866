import axe from 'axe-core';

/** Rules not asked, with the reason. */
const NOT_ASKED: Readonly<Record<string, string>> = {
  'meta-viewport': 'a glove that spreads two fingers must not zoom a dose out of sight',
  'color-contrast': 'contrastFaults asks for more, of every word',
};

/** What axe calls serious or critical on the page as it stands, one line each. */
export async function barriers(): Promise<string[]> {
  const { violations } = await axe.run(document, {
    resultTypes: ['violations'],
    rules: Object.fromEntries(Object.keys(NOT_ASKED).map((rule) => [rule, { enabled: false }])),
  });
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, impact, nodes }) => nodes.map(({ html }) => `${id} (${impact}): ${html.slice(0, 160)}`));
}
