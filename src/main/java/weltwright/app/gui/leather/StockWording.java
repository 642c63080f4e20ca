package weltwright.app.gui.leather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import weltwright.job.ShelvedStock;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/** Describes stock and layouts in a few words. */
final class StockWording {
    private static final double RECTANGLE_SHARE = 0.9999;

    private final Messages messages;
    private final MeasureUnit unit;

    StockWording(MeasureUnit unit) {
        this.unit = unit;
        messages = Messages.of(StockWording.class).withUnit(unit);
    }

    /** Whether stock is a whole rectangle. */
    static boolean isPanel(Stock stock) {
        Polygon outline = stock.outline().polygon();
        Envelope extent = outline.getEnvelopeInternal();
        return stock.flaws().isEmpty() && outline.getArea() > RECTANGLE_SHARE * extent.getArea();
    }

    /** "610 × 305 mm · 3.0 mm": the extent, and the thickness if it is known. */
    String size(Stock stock) {
        Envelope extent = stock.outline().polygon().getEnvelopeInternal();
        String sides = unit.figures(extent.getWidth(), 0) + " × " + unit.format(extent.getHeight(), 0);
        return stock.thicknessMm().isPresent()
                ? messages.text("stock.thick", sides, stock.thicknessMm().getAsDouble())
                : sides;
    }

    /** Kind and price, as far as they are known. */
    String details(ShelvedStock item) {
        List<String> parts = new ArrayList<>();
        if (!item.kind().isEmpty()) {
            parts.add(item.kind());
        }
        item.price().map(this::price).ifPresent(parts::add);
        return String.join(" · ", parts);
    }

    private String price(LeatherPrice price) {
        return Language.decimal(price.amount().toPlainString()) + " " + per(price.per());
    }

    /** What a price buys: "a piece". */
    String per(LeatherPrice.Per per) {
        return messages.text("per." + per.name().toLowerCase(Locale.ROOT));
    }

    /** "5 sheaths · 71 % of 558 mm used". */
    String layout(StockLayout layout, boolean better) {
        int sheaths = layout.sheaths().size();
        double used = layout.usedAreaMm2();
        double share = used > 0 ? layout.piecesAreaMm2() / used : 0;
        return messages.text(better ? "chip.so_far" : "chip.found", sheaths, share, layout.usedLengthMm());
    }

    /** "8 sheaths on 2 pieces of leather · 71 % used". */
    String layouts(List<StockLayout> layouts, boolean better) {
        if (layouts.size() == 1) {
            return layout(layouts.get(0), better);
        }
        double used = layouts.stream().mapToDouble(StockLayout::usedAreaMm2).sum();
        double pieces = layouts.stream().mapToDouble(StockLayout::piecesAreaMm2).sum();
        return messages.text(
                better ? "chip.several_so_far" : "chip.several",
                LayoutInput.sheaths(layouts),
                layouts.size(),
                used > 0 ? pieces / used : 0);
    }

    /** The same for one of several, with its name. */
    String named(StockLayout layout) {
        return layout.stock().name() + ": " + layout(layout, false);
    }
}
