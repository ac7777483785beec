/** Why an edit of a programme was not made. */
import type { EditRefusal } from '../domain/workshop/refusal.ts';

const number = (value: string | number | undefined): string => String(value ?? '');

export function editRefusal({ code, detail = {} }: EditRefusal): string {
  switch (code) {
    case 'date':
      return 'There is no such day.';
    case 'groups-full':
      return `A programme has at most ${number(detail.limit)} groups.`;
    case 'id':
      return 'A group cannot be told from the others. Nothing was changed.';
    case 'last-group':
      return 'A programme needs at least one group.';
    case 'last-session':
      return 'Every group needs at least one session in each week.';
    case 'last-week':
      return 'A programme needs at least one week.';
    case 'number':
      return `Give a number from ${number(detail.min)} to ${number(detail.max)}.`;
    case 'reminders-full':
      return `A programme has at most ${number(detail.limit)} reminders.`;
    case 'sessions-full':
      return `A group has at most ${number(detail.limit)} sessions in a week.`;
    case 'shape':
      return 'Some groups would be left without sessions. Nothing was changed.';
    case 'text-long':
      return `This is too long: at most ${number(detail.limit)} characters.`;
    case 'unreadable':
      return 'This session cannot be read yet, so it cannot be stepped up. Put it right first, or copy it as it is.';
    case 'weeks-full':
      return `A programme has at most ${number(detail.limit)} weeks.`;
    default:
      return code satisfies never;
  }
}
