package weltwright.sheath.pattern;

/** How much a piece of {@link Advice} matters, the gravest first. */
public enum Severity {
    /** Leather, hand or knife would come to harm: change something before cutting. */
    STOP,
    /** The sheath can be made so, but the maker should decide it with open eyes. */
    MIND,
    /** Good to know. */
    NOTE
}
