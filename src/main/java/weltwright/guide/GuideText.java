package weltwright.guide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/**
 * Renders a page as plain text for a terminal: wrapped paragraphs and lists, a table's rows as "cell: cell", and
 * commands as they stand, so that they can be copied.
 */
final class GuideText {
    private final int width;

    GuideText(int width) {
        this.width = width;
    }

    String render(Node document) {
        Blocks blocks = new Blocks();
        document.accept(blocks);
        return String.join("\n", blocks.lines).strip() + "\n";
    }

    /** Wraps a text; lines after the first are indented by as much as {@code first} is long. */
    private List<String> wrap(String first, String text) {
        List<String> lines = new ArrayList<>();
        String indent = " ".repeat(first.length());
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.split("\\s+", -1)) {
            if (!empty && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }

    private static String inline(Node block) {
        StringBuilder text = new StringBuilder();
        block.accept(new AbstractVisitor() {
            @Override
            public void visit(Text node) {
                text.append(node.getLiteral());
            }

            @Override
            public void visit(Code node) {
                text.append(node.getLiteral());
            }

            @Override
            public void visit(SoftLineBreak node) {
                text.append(' ');
            }

            @Override
            public void visit(HardLineBreak node) {
                text.append(' ');
            }
        });
        return text.toString();
    }

    /** Collects the lines of all blocks. */
    private final class Blocks extends AbstractVisitor {
        private final List<String> lines = new ArrayList<>();
        private String bullet = "";
        private int number;

        @Override
        public void visit(Heading heading) {
            String text = inline(heading);
            lines.add("");
            lines.add(heading.getLevel() == 1 ? text : text + ":");
            if (heading.getLevel() == 1) {
                lines.add("=".repeat(text.length()));
            }
            lines.add("");
        }

        @Override
        public void visit(Paragraph paragraph) {
            lines.addAll(wrap(bullet, inline(paragraph)));
            if (bullet.isEmpty()) {
                lines.add("");
            }
        }

        @Override
        public void visit(BulletList list) {
            visitChildren(list);
            lines.add("");
        }

        @Override
        public void visit(OrderedList list) {
            number = 0;
            visitChildren(list);
            lines.add("");
        }

        @Override
        public void visit(ListItem item) {
            bullet = item.getParent() instanceof OrderedList ? String.format(Locale.ROOT, "%2d. ", ++number) : "  - ";
            visitChildren(item);
            bullet = "";
        }

        @Override
        public void visit(IndentedCodeBlock code) {
            code.getLiteral().lines().forEach(line -> lines.add("    " + line));
            lines.add("");
        }

        @Override
        public void visit(CustomBlock table) {
            visitChildren(table);
            lines.add("");
        }

        @Override
        public void visit(CustomNode node) {
            if (node instanceof TableHead) {
                return; // "cell: cell" needs no heading
            }
            if (!(node instanceof TableRow)) {
                visitChildren(node);
                return;
            }
            List<String> cells = new ArrayList<>();
            for (Node cell = node.getFirstChild(); cell != null; cell = cell.getNext()) {
                if (cell instanceof TableCell) {
                    cells.add(inline(cell));
                }
            }
            String others = cells.stream().skip(1).collect(Collectors.joining("; "));
            lines.addAll(wrap("  ", cells.get(0) + ": " + others));
        }
    }
}
