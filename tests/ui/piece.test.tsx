import { act, render, screen, waitFor } from '@testing-library/react';
import { Component, type ReactNode } from 'react';
import { describe, expect, it } from 'vitest';
import { piece } from '../../src/ui/piece.tsx';

/** What the app's own boundary does: keeps the page, and offers another try. */
class Boundary extends Component<{ children: ReactNode }, { failed: boolean }> {
  override state = { failed: false };
  static getDerivedStateFromError() {
    return { failed: true };
  }
  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <button type="button" onClick={() => this.setState({ failed: false })}>
        again
      </button>
    );
  }
}

const Heron = ({ name }: { name: string }) => <p>{name} stands</p>;

describe('a part in a script of its own', () => {
  it('UI-96 is drawn as soon as its script is there, and at once from then on', async () => {
    let asked = 0;
    const Part = piece(async () => {
      asked += 1;
      return Heron;
    }, 'meanwhile');
    const first = render(<Part name="One" />);
    expect(first.container.textContent).toBe('meanwhile');
    // No timer runs in here: what waited for one would still not be there.
    await act(async () => undefined);
    expect(first.container.textContent).toBe('One stands');
    expect(render(<Part name="Another" />).container.textContent).toBe('Another stands');
    expect(asked).toBe(1);
  });

  it('UI-97 whose script did not come says so where the page can catch it, and is asked for anew', async () => {
    let asked = 0;
    const Part = piece(async () => {
      asked += 1;
      if (asked === 1) throw new Error('no signal');
      return Heron;
    });
    render(
      <Boundary>
        <Part name="One" />
      </Boundary>,
    );
    const again = await screen.findByRole('button', { name: 'again' });
    again.click();
    await waitFor(() => expect(screen.getByText('One stands')).toBeTruthy());
    expect(asked).toBe(2);
  });
});
