package weltwright.assembly;

/** The kinds of work at the bench, in the order in which they come within a phase where nothing asks for another. */
public enum OperationKind {
    CUT,
    MARK,
    SKIVE,
    /** Cutting a line into the grain, along an edge or for stitches to lie in. */
    GROOVE,
    PUNCH,
    /** Cutting away what is beyond the edge of a sewn stack, until all its layers are flush. */
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
    /** Setting the half of a snap whose place is found on the knife. */
    SNAP,
    /** Oil and wax. */
    FINISH
}
