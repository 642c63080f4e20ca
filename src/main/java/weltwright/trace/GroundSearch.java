package weltwright.trace;

import weltwright.ground.GroundChoice;
import weltwright.ground.GroundFinder;
import weltwright.ground.LensPrior;
import weltwright.ground.PaperFinder;
import weltwright.ground.Picture;
import weltwright.ground.RectangleFinder;
import weltwright.ground.RuledFinder;
import weltwright.ground.SheetFinder;
import weltwright.measure.PrintScale;
import weltwright.trouble.Trouble;

/** The ground that was told, found in the picture; or, where none was told, the one that the picture shows. */
final class GroundSearch {
    static final OpenGround WHICH_PITCH = new OpenGround(
            "The knife lies on a ruled ground, and no photo tells how far apart its lines are.",
            "Say it, counting fine lines too, such as 10 mm or 1/2 in. If it is the printed sheet that it lies on,"
                    + " photograph it again with its frame in view, sharp.");

    private static final OpenGround WHICH_PAPER = new OpenGround(
            "The knife lies on a sheet of paper, and this photo does not tell its size.",
            "Say whether it is A4 or Letter; for another size set its four corners by hand.");

    private static final Trouble WHAT = new Trouble(
            "Neither the printed sheet nor a ruled ground nor a blank sheet of paper is to be seen in the picture.",
            "Photograph the knife again on the printed sheet, its whole frame in view, sharp and evenly lit; or set the"
                    + " four corners of something of known size by hand.");

    private GroundSearch() {}

    /** @throws Trouble where it is not found, or where the picture leaves its size open */
    static KnownGround find(Picture picture, GroundChoice choice, PrintScale sheetScale, LensPrior lens) {
        if (choice instanceof GroundChoice.Ruled ruled) {
            return new RuledGround(RuledFinder.find(picture, ruled.pitchMm(), ruled.pitchMm()), ruled.pitchMm());
        }
        if (choice instanceof GroundChoice.Paper paper) {
            return new PaperGround(PaperFinder.find(picture, paper.widthMm(), paper.heightMm()), false);
        }
        if (choice instanceof GroundChoice.Rectangle rectangle) {
            return new RectangleGround(RectangleFinder.find(picture, rectangle));
        }
        if (choice instanceof GroundChoice.Any) {
            return known(GroundFinder.find(picture, sheetScale, lens), sheetScale);
        }
        return new SheetGround(SheetFinder.find(picture, sheetScale), sheetScale);
    }

    /** @throws Trouble where the picture leaves open what it is */
    static KnownGround known(GroundFinder.Seen seen, PrintScale sheetScale) {
        if (seen instanceof GroundFinder.Sheet sheet) {
            return new SheetGround(sheet.found(), sheetScale);
        }
        if (seen instanceof GroundFinder.Paper paper) {
            return new PaperGround(paper.found(), true);
        }
        if (seen instanceof GroundFinder.Ruling) {
            throw WHICH_PITCH;
        }
        throw seen instanceof GroundFinder.UnsizedPaper ? WHICH_PAPER : WHAT;
    }
}
