package weltwright.sheath.pattern;

/** The severity of {@link Advice}, the greatest first. */
public enum Severity {
    /** Leather, hand or knife would be damaged: a choice must change before cutting. */
    STOP,
    /** The sheath can be made, with a drawback that the maker should decide about. */
    MIND,
    /** Information. */
    NOTE
}
