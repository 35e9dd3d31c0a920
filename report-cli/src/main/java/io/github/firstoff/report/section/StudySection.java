package io.github.firstoff.report.section;

import io.github.firstoff.report.figure.ControlFigure;
import io.github.firstoff.report.figure.HistogramFigure;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Part;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.Finding;
import io.github.firstoff.sheet.ProcessStudy;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A characteristic under study: one sentence, one picture, the signals in words, the indices or why there are none. */
public final class StudySection {
    private static final double SINGLE = 62;
    private static final double TWO = 90;
    private static final double THREE = 112;
    private static final double HISTOGRAM = 50;

    private final Finding finding;
    private final Demands demands;

    /** The section of one finding, which has a study. */
    public StudySection(Sheet sheet, Finding finding) {
        this.finding = finding;
        this.demands = new Demands(sheet, finding);
    }

    /** The blocks, from the heading to the notes. */
    public List<Block> blocks() {
        StudyStory story = new StudyStory(finding);
        ControlChartSection chart = new ControlChartSection(finding, story.signals());
        List<Block> blocks = new ArrayList<>();
        blocks.add(Block.Heading.of(title()));
        blocks.add(new Block.Headline(Text.of(story.headline()), tone(story)));
        blocks.add(new Block.Paragraph(requirement().plain(story.paragraph())));
        Optional<ControlFigure> figure = chart.figure();
        figure.ifPresent(each -> blocks.add(new Block.FigureBlock(each, height(each), story.alternative())));
        if (!story.signals().isEmpty()) {
            blocks.add(new Block.MarkedList(story.signals().items()));
        }
        blocks.addAll(new PhaseTable(study(), chart).blocks());
        List<Block> notes = story.notes().stream()
                .<Block>map(note -> new Block.Note(Text.of(note)))
                .toList();
        if (study().indices().isEmpty()) {
            blocks.addAll(new CountsSection(finding).blocks());
            blocks.addAll(inColumns(notes));
            return blocks;
        }
        below(blocks, notes, figure.isPresent() && chart.holdsHistogram());
        return blocks;
    }

    private ProcessStudy study() {
        return finding.study().orElseThrow();
    }

    private static double height(ControlFigure figure) {
        return switch (figure.panels().size()) {
            case 1 -> SINGLE;
            case 2 -> TWO;
            default -> THREE;
        };
    }

    /**
     * The histogram, and beside it the indices and the notes; where there is a probability plot, that beside the histogram, and words
     * below; words alone where there are too few readings for a picture.
     */
    private void below(List<Block> blocks, List<Block> notes, boolean histogramAside) {
        ProcessStudy.Indices indices = study().indices().orElseThrow();
        List<Block> words = new ArrayList<>(new CapabilitySection(finding, demands.mark()).blocks());
        List<Block> drift = indices.trended()
                .map(trended -> new TrendSection(finding, trended, demands.mark()).blocks())
                .orElse(List.of());
        List<Block> probability = new ProbabilitySection(finding, indices).blocks();
        HistogramSection section = new HistogramSection(finding);
        Optional<HistogramFigure> histogram = histogramAside ? Optional.empty() : section.figure();
        if (histogramAside && !section.note().isEmpty()) {
            words.add(new Block.Note(Text.of(Labels.text("histogram.aside") + " " + section.note())));
        }
        List<Block> picture = new ArrayList<>();
        histogram.ifPresent(each -> {
            String alternative = Labels.text(
                    "histogram.alternative",
                    each.name(),
                    Figures.limitsInWords(finding.result().characteristic().limits()));
            picture.add(new Block.FigureBlock(each, HISTOGRAM, alternative));
            if (!section.note().isEmpty()) {
                picture.add(new Block.Note(Text.of(section.note())));
            }
        });
        if (picture.isEmpty() && probability.isEmpty()) {
            blocks.addAll(words);
        } else if (picture.isEmpty() || probability.isEmpty()) {
            List<Block> beside = picture.isEmpty() ? probability : picture;
            blocks.add(new Block.SideBySide(List.of(new Part(5, beside), new Part(7, words))));
        } else {
            blocks.add(new Block.SideBySide(List.of(new Part(6, picture), new Part(6, probability))));
            blocks.addAll(words);
        }
        blocks.addAll(drift);
        blocks.addAll(inColumns(notes));
    }

    /** Notes in two columns: lines of small type over the whole measure read badly, and would take more room. */
    private static List<Block> inColumns(List<Block> notes) {
        if (notes.size() < 2) {
            return notes;
        }
        int all = notes.stream().mapToInt(StudySection::length).sum();
        int left = 0;
        int sum = 0;
        // the split that leaves the columns most alike
        while (left < notes.size() - 1 && sum + length(notes.get(left)) / 2 < all / 2) {
            sum += length(notes.get(left));
            left++;
        }
        left = Math.max(1, left);
        return List.of(new Block.SideBySide(
                List.of(new Part(6, notes.subList(0, left)), new Part(6, notes.subList(left, notes.size())))));
    }

    /** Letters of a note, and the room between two. */
    private static int length(Block note) {
        int between = 40;
        int letters = note instanceof Block.Note words
                ? words.text().runs().stream()
                        .mapToInt(run ->
                                run instanceof Text.Plain plain ? plain.text().length() : 0)
                        .sum()
                : 0;
        return letters + between;
    }

    private String title() {
        return Labels.text(
                "study.title",
                finding.number(),
                Wording.feature(finding.result().characteristic()),
                Wording.chartInTitle(study()));
    }

    private Text requirement() {
        Text required = Text.of(Labels.text("study.required"))
                .notation(Notations.of(finding.result().characteristic().characteristic()));
        return finding.result().characteristic().isAttribute()
                ? required.plain(". ")
                : required.plain(" ("
                        + Figures.limitsInWords(
                                finding.result().characteristic().limits()) + "). ");
    }

    private static Tone tone(StudyStory story) {
        return story.isShownInControl() ? Tone.GOOD : Tone.OPEN;
    }
}
