package weltwright.paper;

/** The paper that a pattern is printed on. */
public enum PaperSize {
    /** 210 mm by 297 mm, ISO 216. */
    A4,
    /** 8.5 in by 11 in, ANSI/ASME Y14.1 size A. */
    LETTER,
    /** One page of the least size of the ISO A series, from A3 to A0, that takes the whole pattern uncut. */
    ONE_LARGE_PAGE
}
