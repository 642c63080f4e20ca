package weltwright.sheath.spec;

/** The construction of the body of a sheath. */
public enum SheathKind {
    /** One piece folded round the spine, with a welt along the edge. */
    FOLDED,
    /** A face and a back, with a welt all round but for the throat. */
    PANELS,
    /** A face and a back, with a welt along the edge; along the spine they are sewn to each other. */
    PANELS_EDGE_WELT
}
