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
     * Puts a table under its title: on one page where a page takes it, else over several with its head on each, title and
     * head never left alone.
     */
    void addTable(CardTitle title, CardRow head, List<CardRow> rows) {
        List<Block> all = new ArrayList<>(List.of(title, head));
        all.addAll(rows);
        if (all.stream().mapToDouble(Block::heightMm).sum() <= heightMm) {
            addTogether(all);
            return;
        }
        addTogether(List.of(title, head, rows.get(0)));
        for (CardRow row : rows.subList(1, rows.size())) {
            boolean full = usedMm + row.heightMm() > heightMm;
            addTogether(full ? List.of(head, row) : List.of(row));
        }
    }

    /** Puts lines under their title, over as many pages as they take. */
    void addProse(CardTitle title, List<CardRow> lines) {
        addTogether(List.of(title, lines.get(0)));
        lines.subList(1, lines.size()).forEach(line -> addTogether(List.of(line)));
    }

    List<List<Placed>> pages() {
        return pages;
    }
}
