/** Tests of the coverage stage and the hand-made cavities that they and the reports' tests look at. */
package baymist.coverage;
