package weltwright.trace;

/** What is printed at a place of a ground, and may be mistaken for the knife's edge. */
enum GroundPrint {
    NONE,
    LINE,
    BLACK
}
