import { common } from '../../copy/common.ts';
import { install } from '../../copy/install.ts';
import { installSteps } from '../../copy/install-steps.ts';
import { useDevice } from '../app-context.tsx';
import { InstallHint } from '../parts/InstallHint.tsx';
import { Screen } from '../parts/Screen.tsx';

const ORDER = ['ios', 'android', 'other'] as const;

/** How to keep the app, this phone's way first. */
export function Install() {
  const platform = useDevice((d) => d.platform);
  const installed = useDevice((d) => d.installed);
  const order = [platform, ...ORDER.filter((each) => each !== platform)];
  return (
    <Screen title={install.title} back={{ href: '/settings', name: common.settings }}>
      {order.map((each) => (
        <section key={each} className="stack">
          <h2>{installSteps[each].title}</h2>
          <ol className="steps">
            {installSteps[each].steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          {each === 'ios' && !installed && <p className="soft">{installSteps.ios.tab}</p>}
        </section>
      ))}
      <InstallHint steps={false} />
    </Screen>
  );
}
