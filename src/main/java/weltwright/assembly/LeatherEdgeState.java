package weltwright.assembly;

/** The state of an edge in an assembled sheath, which determines when it can be finished. */
public enum LeatherEdgeState {
    /** Never covered and never sewn: finished at any time. */
    FREE,
    /** One of its sides cannot be reached once the sheath is assembled: finished before. */
    OUT_OF_REACH,
    /** Part of a sewn stack: left alone until it is sewn, then trimmed and finished as one with the others. */
    SEWN
}
