/**
 * Pictures of a result: the coverage map and the course of the job in time, as PNG.
 *
 * <p>In: a {@link baymist.run.RunResult}. Out: image files, written whole or not at all. How a coverage map comes about:
 *
 * <ol>
 *   <li>{@code PanelFinder} sorts the interior surfels into panels, one for each face of each part, and gives each panel
 *       a plane square to its mean normal with axes that all panels of a kind share;
 *   <li>{@code PanelLayout} finds one scale for all panels and sets them in rows;
 *   <li>{@code PanelRaster} gives every pixel of a panel to the nearest surfel, within the outline of the sheet;
 *   <li>{@code PanelPainter} colours the pixels by film, hatches and outlines what is bare, and draws openings, the
 *       path of the tip and the numbers of the bare regions;
 *   <li>{@code CoverageMap} adds title, legend, scale bar, figures, the list of regions and the chart over time.
 * </ol>
 *
 * <p>Film is shown on a logarithmic scale in a colour map of our own, a path through OKLab (Ottosson 2020) on which
 * equal steps look equally large and lightness falls throughout, so that it survives colour-blind eyes and a grey copy.
 *
 * <p>Letters are filled outlines from a font file that is part of the program: Java's own text needs fonts and a font
 * configuration that a bare machine lacks. Nothing here uses {@code java.awt.Font}.
 *
 * <p>Limits: a strongly curved part is shown in two halves or six sides, foreshortened towards the rim; surfels that
 * stand square to their panel (the ends of a sheet) show as slivers or not at all, but count in every figure.
 */
@NullMarked
package baymist.picture;

import org.jspecify.annotations.NullMarked;
