package weltwright.output.card;

import java.util.ArrayList;
import java.util.List;
import weltwright.output.pdf.PageBlock;

/**
 * Lays blocks one under another over as many pages as they take. Groups are kept whole: a title goes with what it
 * stands over.
 *
 * <p>A table that a page would take is kept whole too, or else begun where there is room for some of its rows.
 */
final class CardFlow {
    /** So many rows make it worth while to begin a table at the foot of a page. */
    private static final int ROWS_TO_BEGIN_WITH = 5;

    private final double heightMm;
    private final boolean tablesWhole;
    private final List<List<Placed>> pages = new ArrayList<>();
    private double usedMm;

    /**
     * @param heightMm of a page, between its margins
     * @param tablesWhole whether a table that a page would take is never parted
     */
    CardFlow(double heightMm, boolean tablesWhole) {
        this.heightMm = heightMm;
        this.tablesWhole = tablesWhole;
        pages.add(new ArrayList<>());
    }

    /**
     * A block on its page.
     *
     * @param downMm from the upper margin to the block
     */
    record Placed(PageBlock block, double downMm) {}

    /** Puts blocks on one page, on the next where they do not fit on this one. */
    void addTogether(List<? extends PageBlock> blocks) {
        double height = height(blocks);
        if (usedMm > 0 && usedMm + height > heightMm) {
            pages.add(new ArrayList<>());
            usedMm = 0;
        }
        for (PageBlock block : blocks) {
            pages.get(pages.size() - 1).add(new Placed(block, usedMm));
            usedMm += block.heightMm();
        }
    }

    /**
     * Puts a table under its title: on one page, or over several with its head on each, title and head never left
     * alone.
     */
    void addTable(CardTitle title, CardRow head, List<CardRow> rows) {
        List<PageBlock> all = new ArrayList<>(List.of(title, head));
        all.addAll(rows);
        double height = height(all);
        if (height <= heightMm - usedMm || (tablesWhole && height <= heightMm)) {
            addTogether(all);
            return;
        }
        int first = withoutTitleAtItsEnd(rows, 0, Math.min(ROWS_TO_BEGIN_WITH, rows.size()));
        addTogether(all.subList(0, all.size() - rows.size() + first));
        for (int from = first; from < rows.size(); ) {
            int to = withoutTitleAtItsEnd(rows, from, from + 1);
            List<PageBlock> next = new ArrayList<>(rows.subList(from, to));
            if (usedMm + height(next) > heightMm) {
                next.add(0, head);
            }
            addTogether(next);
            from = to;
        }
    }

    /** The end of some rows, farther on where the last of them would be the title of the next. */
    private static int withoutTitleAtItsEnd(List<CardRow> rows, int from, int to) {
        int end = to;
        while (end > from && end < rows.size() && rows.get(end - 1).kind() == CardRow.Kind.PART) {
            end++;
        }
        return end;
    }

    /** Puts lines under their title, over as many pages as they take. */
    void addProse(CardTitle title, List<CardRow> lines) {
        addTogether(List.of(title, lines.get(0)));
        lines.subList(1, lines.size()).forEach(line -> addTogether(List.of(line)));
    }

    private static double height(List<? extends PageBlock> blocks) {
        return blocks.stream().mapToDouble(PageBlock::heightMm).sum();
    }

    List<List<Placed>> pages() {
        return pages;
    }
}
