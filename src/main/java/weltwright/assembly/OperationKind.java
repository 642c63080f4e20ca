package weltwright.assembly;

/** Kinds of operations, in their order within a phase where no constraint requires another. */
public enum OperationKind {
    CUT,
    MARK,
    SKIVE,
    /** Cutting a line into the grain, along an edge or for stitches to lie in. */
    GROOVE,
    PUNCH,
    /** Cutting the edge of a sewn stack until all layers are flush. */
    TRIM,
    BEVEL,
    SAND,
    DYE,
    BURNISH,
    /** Damping leather until it can be bent or formed. */
    CASE,
    ROUGHEN,
    GLUE,
    STITCH,
    /** Setting rivets, the first half of a snap, eyelets and rings. */
    RIVET,
    /** Forming the damp sheath to the knife. */
    FORM,
    /** Trying the knife in the finished form. */
    FIT,
    /** Setting the half of a snap whose place is found with the knife in the sheath. */
    SNAP,
    /** Oil and wax. */
    FINISH
}
