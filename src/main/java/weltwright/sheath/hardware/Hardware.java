package weltwright.sheath.hardware;

/** What holds leather together without thread: a thing that a maker has in a drawer. */
public sealed interface Hardware permits Fastener, Ring {

    /** What a maker asks for in a shop. */
    String name();

    Kind kind();

    /** What it does. */
    enum Kind {
        RIVET,
        /** A press stud: a cap and a stud, each set in its own layer. */
        SNAP,
        EYELET,
        RING
    }
}
