import { dateFormat } from './date-format.ts';

const dayMonth = dateFormat({
  day: 'numeric',
  month: 'short',
  timeZone: 'UTC',
});

/** Monday to Sunday of a week, as people write it: "1 Mar to 7 Mar". Days since 1970-01-01. */
export const weekDates = (monday: number): string => {
  const said = (day: number): string => dayMonth(day * 86_400_000);
  return `${said(monday)} to ${said(monday + 6)}`;
};
