/**
 * Everything that the voice can say, as clips to be joined at natural breaks.
 * The pack's builder speaks every clip listed here, and a test walks the whole of it.
 */

/** Name of a clip in the voice pack, such as `activity.brisk-walk`, `number.7` or `tone.short`. */
export type ClipId = string;
