package weltwright.sheath.hardware;

import weltwright.message.Messages;

/** An item that holds leather together without thread. */
public sealed interface Hardware permits Fastener, Ring {
    Messages TEXTS = Messages.of(Hardware.class);

    /** Returns its name as in a shop, by which files refer to it. */
    String name();

    /** Returns its name in the user's language, if it is one of the usual sizes, else as it is. */
    default String words() {
        String key = "hardware." + name().replaceAll("\\W+", "-");
        return TEXTS.has(key) ? TEXTS.text(key) : name();
    }

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
