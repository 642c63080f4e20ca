package weltwright.output.cutter;

import weltwright.message.Messages;

/** A side of a piece of leather. */
public enum LeatherSide {
    /** The smooth side, which shows. */
    GRAIN,
    /** The rough side, which lies inside. */
    FLESH;

    /** The name for display: "grain side". */
    public String words() {
        return this == GRAIN
                ? Messages.of(LeatherSide.class).text("leather-side.grain-side")
                : Messages.of(LeatherSide.class).text("leather-side.flesh-side");
    }
}
