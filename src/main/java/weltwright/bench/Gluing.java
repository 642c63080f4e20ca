package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import weltwright.sheath.Piece;

/** How the layers of a seam are glued on one another before they are sewn, in words. */
final class Gluing {
    private Gluing() {}

    static String of(Join join) {
        return join.stack() ? stack(join) : patch(join);
    }

    private static String patch(Join join) {
        List<String> names = join.pieceNames();
        if (names.size() == 1) {
            return "Fold the " + join.name() + " back and glue its end down";
        }
        String under = join.pieces().get(join.under()).name();
        List<String> laid = names.stream().filter(name -> !name.equals(under)).toList();
        boolean folded = join.layers().size() > names.size();
        return (folded ? "Fold the " + Words.and(laid) + " and glue its ends, one on the other,"
                        : "Glue the " + Words.and(laid))
                + " to the " + under;
    }

    private static String stack(Join join) {
        List<String> inside = new ArrayList<>();
        for (int i = 0; i < join.pieces().size(); i++) {
            if (join.isInside(i)) {
                Piece piece = join.pieces().get(i);
                inside.add((piece.count() == 1 ? "the " : "the " + piece.count() + " layers of ") + piece.name());
            }
        }
        String face = join.pieces().get(0).name();
        String back = join.pieces().get(join.pieces().size() - 1).name();
        String close = face.equals(back) ? "fold the " + face + " over" : "lay the " + face + " on";
        return inside.isEmpty()
                ? "Glue the edges of the " + back + ", and " + close + ", notch on notch"
                : "Glue " + Words.and(inside) + " to the " + back + ", and " + close + ", notch on notch";
    }
}
