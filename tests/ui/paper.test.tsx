import { render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { Sending } from '../../src/app/exchange-contract.ts';
import { cautions, HELP, STOP_SIGNS } from '../../src/copy/cautions.ts';
import { effortOfTen } from '../../src/copy/effort.ts';
import { paper } from '../../src/copy/paper.ts';
import { readProgramme } from '../../src/domain/programme/read.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { Paper, type Printed } from '../../src/ui/workshop/Paper.tsx';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { DEMO, fakeApp } from '../drivers/fake-app.ts';
import { user } from './show.tsx';

const SENDING: Sending = {
  programmeId: DEMO.id,
  title: DEMO.title,
  revision: 3,
  signed: true,
  link: 'https://club.example/marsh/#/join/AQabc',
  linkIsLocal: false,
  text: '',
  fileName: '',
  codes: [
    { size: 29, path: 'M4 4h1v1h-1z', version: 1 },
    { size: 133, path: 'M5 5h1v1h-1z', version: 25 },
  ],
  message: '',
};

function open(more: Partial<Printed> = {}) {
  render(
    <AppProvider app={fakeApp()}>
      <Router hook={useHashLocation}>
        <Paper
          outline={DEMO}
          title={DEMO.title}
          leader="Imogen"
          sending={SENDING}
          back={{ href: '/lead/one', name: 'Back' }}
          {...more}
        />
      </Router>
    </AppProvider>,
  );
}

const pages = () => [...document.querySelectorAll<HTMLElement>('.paper-page')];
const page = (n: number) => pages()[n - 1] as HTMLElement;
afterEach(() => vi.unstubAllGlobals());

describe('a programme on paper', () => {
  it('PAPER-1 has one page for each week, or the one that was chosen', async () => {
    open();
    expect(pages()).toHaveLength(6);
    await user.selectOptions(screen.getByLabelText(paper.what), '4');
    expect(pages()).toHaveLength(1);
    expect(within(page(1)).getByText(paper.week(4, 6))).toBeDefined();
    await user.selectOptions(screen.getByLabelText(paper.what), paper.whole(6));
    expect(pages()).toHaveLength(6);
  });

  it('PAPER-1 is printed with the one button', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    open();
    await user.click(screen.getByRole('button', { name: paper.print }));
    expect(print).toHaveBeenCalledTimes(1);
  });

  it('PAPER-1 says so when nothing can be printed', () => {
    open({ outline: { ...DEMO, weeks: [] } });
    expect(screen.getByText(paper.nothing)).toBeDefined();
    expect(screen.queryByRole('button', { name: paper.print })).toBeNull();
  });

  it('PAPER-2 a page says its week, dates, focus, effort in words and how often', () => {
    open();
    const first = within(page(1));
    expect(first.getByText('Mon, 1 March 2027 to Sun, 7 March 2027')).toBeDefined();
    expect(first.getByText(/^Find your rhythm/)).toBeDefined();
    expect(first.getByText(paper.effort(effortOfTen(5)))).toBeDefined();
    expect(first.getByText(/2 to 3 sessions/)).toBeDefined();
    expect(first.getByText(/^Towards Heron Loop, 5 km/)).toBeDefined();
    expect(within(page(6)).getByText(/^This week: Heron Loop, 5 km/)).toBeDefined();
  });

  it('PAPER-2 without a start there are no dates', () => {
    const { startDate: _, ...outline } = DEMO;
    open({ outline });
    expect(document.querySelector('.paper-dates')).toBeNull();
  });

  it('PAPER-3 every group has its strip, its plan in words and what it adds up to', () => {
    open();
    const groups = page(1).querySelectorAll<HTMLElement>('.paper-groups > li');
    expect([...groups].map((each) => each.querySelector('h3')?.textContent)).toHaveLength(4);
    const curlew = within(groups[2] as HTMLElement);
    expect(
      curlew.getByText(
        'Warm-up: easy walk 5 min. Main set: 7 times: walk 1 min, run 2 min. Cool-down: easy walk 5 min.',
      ),
    ).toBeDefined();
    // 5 + 7 x 3 + 5 min, worked by hand.
    expect(curlew.getByText('31 min in all, main set 21 min')).toBeDefined();
    expect(curlew.getByRole('img', { name: /run 2 minutes/ })).toBeDefined();
    // The third week has two sessions a group, each with its own.
    const wren = page(3).querySelector('.paper-groups > li') as HTMLElement;
    expect(within(wren).getAllByRole('img')).toHaveLength(2);
    expect(wren.textContent).toMatch(/Session 2\. .*35 min in all/);
  });

  it('PAPER-3 a group without a session that can be read is told to have none', () => {
    const [first] = DEMO.weeks;
    if (first === undefined) throw new Error('the demo has no week');
    const { wren: _, ...sessions } = first.sessions;
    open({ outline: { ...DEMO, weeks: [{ ...first, sessions }] } });
    expect(within(page(1)).getByText(paper.noPlan)).toBeDefined();
  });

  it('PAPER-3 of a group that says nothing of whom it is for, only the name is printed', () => {
    const [first, ...others] = DEMO.groups;
    if (first === undefined) throw new Error('the demo has no group');
    open({ outline: { ...DEMO, groups: [{ ...first, for: '' }, ...others] } });
    const named = within(page(1)).getAllByRole('heading', { level: 3 })[0];
    expect(named?.firstElementChild?.textContent?.trim()).toBe(first.name);
  });

  it('PAPER-4 every page has the stop signs, what to do then, and whose word comes first', () => {
    open();
    for (const each of pages()) {
      for (const sign of STOP_SIGNS) expect(within(each).getByText(sign)).toBeDefined();
      for (const line of [...HELP, cautions.notAdvice]) expect(each.textContent).toContain(line);
    }
    expect(HELP.join(' ')).toMatch(/local emergency number/);
  });

  it('PAPER-5 every part of the code is on every page, wide enough for a camera, with the address', () => {
    open();
    for (const each of pages()) {
      const codes = within(each).getAllByRole('img', { name: /^Code of/ });
      // 29 modules would be a stamp; 133 of them need 0.35 mm each.
      expect(codes.map((code) => code.style.width)).toEqual(['32mm', '46.55mm']);
      expect(each.textContent).toContain('Part 2 of 2');
      expect(each.textContent).toContain('Towpath is at club.example/marsh.');
      expect(each.textContent).toContain('Revision 3');
    }
  });

  it('PAPER-5 a local address is not printed, and without a code the preview says why', () => {
    open({ sending: { ...SENDING, linkIsLocal: true, codes: [] } });
    expect(document.body.textContent).not.toContain('club.example');
    expect(screen.getByText(paper.noCode)).toBeDefined();
  });

  it('PAPER-5 before it was sent there is no code, and the preview says so', () => {
    open({ sending: undefined });
    expect(screen.getByText(paper.noSending)).toBeDefined();
    expect(screen.queryByRole('img', { name: /^Code of/ })).toBeNull();
  });

  it('PAPER-3 what others wrote stays text', () => {
    const text = JSON.stringify({
      ...marshProgramme(4),
      title: '<img src=x onerror=alert(1)>',
    });
    const read = readProgramme(text);
    if (!read.ok) throw new Error('not a programme');
    open({ outline: read.value, title: read.value.title });
    expect(document.querySelector('img')).toBeNull();
    expect(page(1).textContent).toContain('<img src=x onerror=alert(1)>');
  });
});
