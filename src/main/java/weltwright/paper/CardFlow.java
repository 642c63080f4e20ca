package weltwright.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays blocks one under another over as many pages as they take. Groups are kept whole: a title goes with what it stands
 * over.
 */
final class CardFlow {
    private final double heightMm;
    private final List<List<Placed>> pages = new ArrayList<>();
    private double usedMm;

    /** @param heightMm of a page, between its margins */
    CardFlow(double heightMm) {
        this.heightMm = heightMm;
        pages.add(new ArrayList<>());
    }

    /**
     * A block on its page.
     *
     * @param downMm from the upper margin to the block
     */
    record Placed(Block block, double downMm) {}

    /** Puts blocks on one page, on the next where they do not fit on this one. */
    void addTogether(List<? extends Block> blocks) {
        double height = blocks.stream().mapToDouble(Block::heightMm).sum();
        if (usedMm > 0 && usedMm + height > heightMm) {
            pages.add(new ArrayList<>());
            usedMm = 0;
        }
        for (Block block : blocks) {
            pages.get(pages.size() - 1).add(new Placed(block, usedMm));
            usedMm += block.heightMm();
        }
    }

    /**
     * Puts a table under its title. Where it runs over a page its head is repeated; the title and the head are never left
     * alone, and the last row is not either.
     */
    void addTable(CardTitle title, CardRow head, List<CardRow> rows) {
        if (rows.size() <= 2) {
            List<Block> all = new ArrayList<>(List.of(title, head));
            all.addAll(rows);
            addTogether(all);
            return;
        }
        addTogether(List.of(title, head, rows.get(0), rows.get(1)));
        for (int i = 2; i < rows.size(); i++) {
            double last = i == rows.size() - 2 ? rows.get(i + 1).heightMm() : 0;
            if (usedMm + rows.get(i).heightMm() + last > heightMm) {
                pages.add(new ArrayList<>());
                usedMm = 0;
                addTogether(List.of(head));
            }
            addTogether(List.of(rows.get(i)));
        }
    }

    List<List<Placed>> pages() {
        return pages;
    }
}
