package weltwright.assembly;

import static weltwright.assembly.AssemblyText.and;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/**
 * Words how the layers of a seam are glued to one another before they are sewn.
 *
 * <p>A stack is glued flesh to welt to flesh, as wide as its welt. A patch is glued grain on grain: a tail to the
 * outside of its own piece, a strap with its outside to another.
 */
final class Gluing {
    private static final Messages TEXTS = Messages.of(Gluing.class);

    /** 10 to 15 minutes: from memory; the cement maker's instructions take precedence. */
    static final String HOW = TEXTS.text("gluing.on-both-faces-press-when");

    private Gluing() {}

    static String of(Join join) {
        return join.stack() ? stack(join) : patch(join);
    }

    /** Returns the width that is glued, from the edge or past the stitches. */
    static String reach(Join join, MeasureUnit unit) {
        if (!join.stack()) {
            return TEXTS.text("gluing.up-to-past-the-stitches", unit.format(Math.ceil(join.fromEdgeMm()), 0));
        }
        return IntStream.range(0, join.pieces().size())
                .filter(join::isInside)
                .boxed()
                .findFirst()
                .map(i -> TEXTS.text("gluing.wide-from-the-edge-as", unit.format(widthMm(join, i), 0)))
                .orElse(TEXTS.text("gluing.wide-from-the-edge", unit.format(Math.ceil(join.fromEdgeMm()), 0)));
    }

    /** Returns the mean width of a strip: its area over its length. */
    private static double widthMm(Join join, int layer) {
        Piece welt = join.pieces().get(layer);
        return Math.round(
                Math.abs(welt.outline().signedAreaMm2()) / join.row(layer).lengthMm());
    }

    /** Lists the grain faces of a join that are glued, as phrases. */
    static List<String> grainFaces(Join join) {
        if (join.stack()) {
            return insideNames(join).stream()
                    .map(name -> TEXTS.text("gluing.one-side-of-each-layer", name))
                    .toList();
        }
        String under = join.pieces().get(join.under()).name();
        return List.of(
                TEXTS.text("gluing.the-place-of-the-on", join.name(), under),
                TEXTS.text("gluing.the-end-of-the-that", join.name()));
    }

    static List<String> piecesWithGrainFaces(Join join) {
        if (join.stack()) {
            return insideNames(join);
        }
        int laid = nextTo(join.under(), join);
        return Stream.of(join.under(), laid)
                .map(i -> join.pieces().get(i).name())
                .distinct()
                .toList();
    }

    private static int nextTo(int under, Join join) {
        return under + 1 < join.pieces().size() ? under + 1 : under - 1;
    }

    private static List<String> insideNames(Join join) {
        return IntStream.range(0, join.pieces().size())
                .filter(join::isInside)
                .mapToObj(i -> join.pieces().get(i).name())
                .distinct()
                .toList();
    }

    private static String patch(Join join) {
        List<String> names = join.pieceNames();
        if (names.size() == 1) {
            return TEXTS.text("gluing.fold-the-back-and-glue", join.name());
        }
        String under = join.pieces().get(join.under()).name();
        List<String> laid = names.stream().filter(name -> !name.equals(under)).toList();
        boolean folded = join.layers().size() > names.size();
        return folded
                ? TEXTS.text("gluing.fold-the-and-glue-its", and(laid), under)
                : TEXTS.text("gluing.glue-the-to-the", and(laid), under);
    }

    private static String stack(Join join) {
        List<String> inside = IntStream.range(0, join.pieces().size())
                .filter(join::isInside)
                .mapToObj(i -> AssemblyText.layers(join.pieces().get(i)))
                .toList();
        String face = join.pieces().get(0).name();
        String back = join.pieces().get(join.pieces().size() - 1).name();
        String key = (inside.isEmpty() ? "gluing.edges." : "gluing.welt.") + (face.equals(back) ? "fold" : "lay");
        String glue = TEXTS.text(key, and(inside), back, face);
        return !inside.isEmpty() && barePart(join) ? TEXTS.text("gluing.where-there-is-no-welt", glue) : glue;
    }

    /** Returns whether some stitches go through the outer layers only. */
    private static boolean barePart(Join join) {
        int holes = join.layers().get(0).holes().size();
        return IntStream.range(0, holes)
                .anyMatch(hole -> IntStream.range(0, join.layers().size())
                        .filter(join::isInside)
                        .noneMatch(i -> join.layers().get(i).reaches(hole)));
    }
}
