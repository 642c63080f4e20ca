package weltwright.output;

import java.util.List;
import weltwright.message.Messages;

/** The safety cautions for makers of sheaths. Common practice. */
public final class SafetyCautions {
    private static final Messages TEXTS = Messages.of(SafetyCautions.class);

    /** Short form, printed beside the pieces. */
    public static final List<String> SHORT = List.of(
            TEXTS.text("safety-cautions.tape-the-blade-s-edge"),
            TEXTS.text("safety-cautions.cut-and-punch-on-a"),
            TEXTS.text("safety-cautions.use-glue-dye-and-finish"),
            TEXTS.text("safety-cautions.test-how-the-knife-is"),
            TEXTS.text("safety-cautions.the-law-on-carrying-knives"));

    /** Full form, printed on the bench card. */
    public static final List<String> WHOLE = List.of(
            TEXTS.text("safety-cautions.the-law-on-making-owning"),
            TEXTS.text("safety-cautions.the-knife-tape-its-edge"),
            TEXTS.text("safety-cautions.cutting-tools-cut-on-a"),
            TEXTS.text("safety-cautions.punches-and-irons-strike-them"),
            TEXTS.text("safety-cautions.glue-dye-and-finish-open"),
            TEXTS.text("safety-cautions.dust-sand-edges-in-a"),
            TEXTS.text("safety-cautions.test-the-finished-sheath-over"));

    private SafetyCautions() {}
}
