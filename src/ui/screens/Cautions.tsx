import { useLocation } from 'wouter';
import { cautions } from '../../copy/cautions.ts';
import { common } from '../../copy/common.ts';
import { useApp, useSettings } from '../app-context.tsx';
import { cameFrom } from '../parts/came-from.ts';
import { useDateAt } from '../parts/date-at.ts';
import { Screen } from '../parts/Screen.tsx';

/** The usual cautions. Shown once before the first session, and reachable from everywhere. */
export function Cautions() {
  const app = useApp();
  const read = useSettings((s) => s.cautionsReadOn !== undefined);
  const dateAt = useDateAt();
  const [, go] = useLocation();
  const from = cameFrom('/settings');
  const agree = async () => {
    await app.settings.getState().change({ cautionsReadOn: dateAt(app.clock.now()) });
    go(from);
  };
  return (
    <Screen
      title={cautions.title}
      sub={cautions.lead}
      back={{ href: from, name: common.back }}
      foot={
        read ? undefined : (
          <button type="button" className="button primary wide" onClick={() => void agree()}>
            {cautions.read}
          </button>
        )
      }
    >
      {cautions.sections.map((section) => (
        <section key={section.id} className={`stack caution ${section.id}`}>
          <h2>{section.title}</h2>
          <ul className="bullets">
            {section.points.map((point) => (
              <li key={point}>{point}</li>
            ))}
          </ul>
          {'end' in section && <p>{section.end}</p>}
        </section>
      ))}
      <p className="soft">{cautions.notAdvice}</p>
    </Screen>
  );
}
