package weltwright.assembly;

/** What the joins of a sheath make of an edge, and so when it can be finished. */
public enum LeatherEdgeState {
    /** Never covered and never sewn along: finished whenever the maker likes. */
    FREE,
    /** One of its sides cannot be reached once the sheath is assembled: finished before. */
    OUT_OF_REACH,
    /** Part of a sewn stack: left alone until it is sewn, then trimmed and finished as one with the others. */
    SEWN
}
