package weltwright.output;

import java.util.List;

/** The safety cautions for makers of sheaths. Common practice. */
public final class SafetyCautions {
    /** Short form, printed beside the pieces. */
    public static final List<String> SHORT = List.of(
            "Tape the blade's edge and point while you fit the knife and trace round it.",
            "Cut and punch on a board, away from your hand. Keep fingers off the line of the knife.",
            "Use glue, dye and finish with the window open; wear a mask when you sand leather edges.",
            "Test how the knife is held, upside down and shaken, over a soft surface. Never carry a knife in a sheath"
                    + " that you have not tested.",
            "The law on carrying knives where you are comes first.");

    /** Full form, printed on the bench card. */
    public static final List<String> WHOLE = List.of(
            "The law on making, owning and carrying knives where you are comes before all that is said here. Where a"
                    + " skilled maker tells you otherwise than this card, listen to the maker.",
            "The knife: tape its edge and point for as long as it is on the bench, and take the tape off last. Put it"
                    + " into the damp sheath well wrapped; leave no blade in wet leather.",
            "Cutting tools: cut on a board, away from the hand that holds, with a sharp blade; a dull one slips. Lay awl"
                    + " and knife down where they cannot roll.",
            "Punches and irons: strike them upright on a board that gives, with a mallet of wood or hide. Wear glasses"
                    + " when you set rivets and snaps.",
            "Glue, dye and finish: open the window, keep flames away, wear gloves, and read what the maker of it says."
                    + " Rags with oil can take fire by themselves: dry them flat, outdoors.",
            "Dust: sand edges in a mask, and not where others breathe.",
            "Test the finished sheath over a soft surface: upside down, shaken, and with the body bent as when sitting."
                    + " Never carry a knife in a sheath that you have not tested.");

    private SafetyCautions() {}
}
