package weltwright.output.layout;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.io.FileKind;
import weltwright.layout.cost.SheathCost;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.card.FinishedSheath;
import weltwright.output.card.FinishedView;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.units.Length;
import weltwright.units.MeasureUnit;
import weltwright.units.PrintScale;

/**
 * A quote for a customer on one page: for whom and which knife, a picture of the sheath with its sizes, and the price
 * with tax. What the price is made of is for the maker alone and not on it.
 */
public final class QuotePdf {
    private static final Messages TEXTS = Messages.of(QuotePdf.class);

    public static final FileKind KIND = TrueSizePdf.KIND;

    private static final double MARGIN_MM = 20;
    private static final double TITLE_MM = 6;
    private static final double TEXT_MM = 3.5;
    private static final double PICTURE_MM = 130;
    private static final double PRICES_MM = 90;
    private static final LineStroke RULE = LineStroke.unbroken(0.3, Color.BLACK);

    private QuotePdf() {}

    /** Writes the PDF. Throws {@link weltwright.error.UserFacingException} where the file cannot be written. */
    public static void write(Pattern pattern, SheathCost cost, PageHeading heading, PaperSize paper, Path file) {
        TrueSizePdf.write(bytes(pattern, cost, heading, paper), file);
    }

    static byte[] bytes(Pattern pattern, SheathCost cost, PageHeading heading, PaperSize paper) {
        PageFrame page = paper.ofCard().frame(PrintScale.TRUE);
        return TrueSizePdf.bytes(TEXTS.text("quote-pdf.quote"), Optional.of(heading.date()), (document, typeface) -> {
            try (PdfCanvas canvas =
                    PdfCanvas.onNewPage(document, typeface, page.widthMm(), page.heightMm(), PrintScale.TRUE)) {
                new Drawing(pattern, cost, heading, page, canvas).draw();
            }
        });
    }

    private record Drawing(Pattern pattern, SheathCost cost, PageHeading heading, PageFrame page, PdfCanvas canvas) {

        void draw() throws IOException {
            double y = page.heightMm() - MARGIN_MM - TITLE_MM;
            canvas.write(TEXTS.text("quote-pdf.quote-for-a-leather-sheath"), new Point(MARGIN_MM, y), TITLE_MM);
            y = lines(List.of(heading.line()), y - TITLE_MM);
            Optional<FinishedSheath> sheath = FinishedSheath.of(pattern);
            if (sheath.isPresent()) {
                new FinishedView(sheath.get(), page.widthMm() - 2 * MARGIN_MM, PICTURE_MM, MeasureUnit.MILLIMETRE)
                        .draw(canvas, new Point(MARGIN_MM, y - TEXT_MM));
                y -= PICTURE_MM + 2 * TEXT_MM;
            }
            List<String> sizes = new ArrayList<>();
            for (SheathDimension size : pattern.sizes()) {
                double mm = size.lengthMm();
                sizes.add(size.name() + ": " + MeasureUnit.MILLIMETRE.format(mm, 0) + " ("
                        + new Length(mm).inSixteenths() + ")");
            }
            y = lines(sizes, y - TEXT_MM) - TEXT_MM;
            y = price(TEXTS.text("quote-pdf.price-without-tax"), cost.words(cost.net()), y);
            y = price(TEXTS.text("quote-pdf.tax"), cost.words(cost.tax()), y);
            canvas.draw(RULE, new Point(MARGIN_MM, y + TEXT_MM), new Point(MARGIN_MM + PRICES_MM, y + TEXT_MM));
            price(TEXTS.text("quote-pdf.to-pay"), cost.words(cost.gross()), y - TEXT_MM / 2);
        }

        private double lines(List<String> texts, double top) throws IOException {
            double y = top;
            for (String text : texts) {
                for (String line : canvas.typeface().wrap(text, page.widthMm() - 2 * MARGIN_MM, TEXT_MM)) {
                    canvas.write(line, new Point(MARGIN_MM, y), TEXT_MM);
                    y -= TEXT_MM * PdfTypeface.LINE;
                }
            }
            return y;
        }

        private double price(String what, String amount, double y) throws IOException {
            canvas.write(what, new Point(MARGIN_MM, y), TEXT_MM);
            double width = canvas.typeface().widthMm(amount, TEXT_MM);
            canvas.write(amount, new Point(MARGIN_MM + PRICES_MM - width, y), TEXT_MM);
            return y - TEXT_MM * PdfTypeface.LINE;
        }
    }
}
