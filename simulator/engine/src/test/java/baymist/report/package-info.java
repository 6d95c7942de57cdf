/** Tests of the reports, and the sample results that the pictures and the command line are tested with. */
package baymist.report;
