package weltwright.app.gui.paper;

import java.util.Optional;
import weltwright.app.gui.model.JobModel;
import weltwright.assembly.AssemblyPlan;
import weltwright.job.Job;
import weltwright.job.PriceFile;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.print.PatternDocument;
import weltwright.output.print.PatternPdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.MeasureUnit;
import weltwright.units.PrintScale;

/**
 * What the printed pages of a pattern follow from.
 *
 * @param unit of the lengths in their texts
 */
record PatternPrintout(Pattern pattern, PageHeading heading, PaperSize paper, PrintScale scale, MeasureUnit unit) {

    static PatternPrintout of(Pattern pattern, JobModel model, PrinterPreferences printer) {
        return new PatternPrintout(pattern, heading(model.job()), printer.paper(), printer.scale(), model.unit());
    }

    static PageHeading heading(Job job) {
        return new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
    }

    /** Makes the pages; reads the maker's prices, and takes about a second. */
    PatternDocument document() {
        Optional<SheathCost> cost = PriceFile.ifSet(PriceFile.standard())
                .map(prices -> SheathCost.of(SheathNeeds.withoutOffcuts(pattern), prices));
        return PatternPdf.document(pattern, AssemblyPlan.of(pattern, unit), cost, heading, paper, scale);
    }
}
