package weltwright.sheath.hardware;

/** An item that holds leather together without thread. */
public sealed interface Hardware permits Fastener, Ring {

    /** Returns its name as in a shop. */
    String name();

    Kind kind();

    /** The kind of an item. */
    enum Kind {
        RIVET,
        /** A press stud: a cap and a stud, each set in its own layer. */
        SNAP,
        EYELET,
        RING
    }
}
