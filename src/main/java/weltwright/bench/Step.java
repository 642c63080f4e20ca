package weltwright.bench;

/** The kinds of work at the bench, in the order in which they come where nothing asks for another. */
public enum Step {
    CUT,
    MARK,
    SKIVE,
    GROOVE,
    PUNCH,
    BEVEL,
    BURNISH,
    GLUE,
    STITCH,
    RIVET,
    TRIM,
    FORM,
    FINISH
}
