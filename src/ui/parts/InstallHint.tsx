import { Link } from 'wouter';
import { install } from '../../copy/install.ts';
import { useApp, useDevice, useUpdates } from '../app-context.tsx';

/**
 * One line on keeping the app, with the browser's own offer where it makes one. `steps` is false
 * on the page that shows the steps.
 */
export function InstallHint({ steps = true }: { steps?: boolean }) {
  const device = useApp().device;
  const installed = useDevice((d) => d.installed);
  const offers = useDevice((d) => d.install !== undefined);
  const stored = useUpdates((u) => u.offlineReady);
  return (
    <section className="stack rule">
      {steps && <h2>{install.title}</h2>}
      <p>
        {installed ? install.installed : install.why}{' '}
        {stored ? install.offlineReady : install.offlineComing}
      </p>
      {!installed && (
        <div className="row">
          {offers && (
            <button
              type="button"
              className="button"
              onClick={() => void device.getState().install?.()}
            >
              {install.now}
            </button>
          )}
          {steps && (
            <Link href="/install" className="text-button">
              {install.show}
            </Link>
          )}
        </div>
      )}
    </section>
  );
}
