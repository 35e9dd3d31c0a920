package io.github.firstoff.report.figure;

/**
 * A picture on a sheet. A new kind of picture is a new record here and one method in the painter.
 */
public sealed interface Figure
        permits BandFigure,
                ConsequenceFigure,
                ControlFigure,
                HistogramFigure,
                HistoryFigure,
                ProbabilityFigure,
                ShareFigure,
                DriftFigure {}
