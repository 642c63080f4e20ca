package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import weltwright.error.UserFacingException;
import weltwright.io.FileNames;
import weltwright.job.Job;
import weltwright.job.PriceFile;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.cost.PriceList;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.layout.QuotePdf;
import weltwright.sheath.pattern.Pattern;

/**
 * Tells what sheaths of a layout cost, and writes their quotes.
 *
 * @param prices of all but leather
 * @param leather prices of leather
 */
record SheathQuote(PriceList prices, LeatherPrices leather, Path folder, PaperSize paper, PrintWriter out) {
    private static final Messages TEXTS = Messages.of(SheathQuote.class);

    private static final String QUOTE = "-quote.pdf";

    /** The maker's prices. Throws {@link UserFacingException} where there are none, or all are 0. */
    static PriceList prices(Path file) {
        if (!Files.exists(file)) {
            throw new UserFacingException(
                    TEXTS.text("sheath-quote.there-are-no-prices-in", file),
                    TEXTS.text("sheath-quote.have-a-list-written-prices"));
        }
        PriceList list = PriceFile.read(file);
        if (list.isBlank()) {
            throw new UserFacingException(
                    TEXTS.text("sheath-quote.all-prices-in-are-0", file),
                    TEXTS.text("sheath-quote.fill-in-your-own-in"));
        }
        return list;
    }

    /** Prints what one sheath costs and writes its quote; of a sheath that is not laid out, neither. */
    void make(String name, Job job, Pattern pattern, List<StockLayout> layouts) {
        if (layouts.stream().noneMatch(layout -> layout.count(name) > 0)) {
            return;
        }
        SheathCost cost = SheathCost.of(SheathNeeds.besidesLeather(pattern), leather.ofSheath(layouts, name), prices);
        out.println(TEXTS.text("sheath-quote.one-sheath", name));
        line(TEXTS.text("sheath-quote.leather-waste-included"), cost.words(cost.leather()));
        line(TEXTS.text("sheath-quote.hardware"), cost.words(cost.hardware()));
        line(TEXTS.text("sheath-quote.thread"), cost.words(cost.thread()));
        line(TEXTS.text("sheath-quote.glue-and-finish"), cost.words(cost.glueAndFinish()));
        line(TEXTS.text("sheath-quote.labour"), cost.words(cost.labour()));
        line(TEXTS.text("sheath-quote.overhead"), cost.words(cost.overhead()));
        line(TEXTS.text("sheath-quote.margin-with-rounding"), cost.words(cost.margin()));
        line(TEXTS.text("sheath-quote.price-without-tax"), cost.words(cost.net()));
        line(TEXTS.text("sheath-quote.tax"), cost.words(cost.tax()));
        line(TEXTS.text("sheath-quote.price"), cost.words(cost.gross()));
        Path file = folder.resolve(FileNames.truncated(JobNames.inFileName(name), List.of(QUOTE)) + QUOTE);
        PageHeading heading = new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
        QuotePdf.write(pattern, cost, heading, paper, file);
        out.println(TEXTS.text("sheath-quote.written", file));
    }

    private void line(String what, String amount) {
        out.printf(Locale.ROOT, "  %-24s %14s%n", what, amount);
    }
}
